import { Canvas } from './canvas.mjs';
import { CHALK, DEEP, LAKE, ORANGE, REED, SLATE } from './colours.mjs';
import { lettered } from './letters.mjs';

const WIDTH = 40;
const HEIGHT = 60;

const FLAG = ['#######', '.#####.', '.#####.', '..###..', '..###..', '...#...'];

const BOAT = [
  '........o...o...o...o.......',
  '........s...s...s...s.......',
  '.......sss.sss.sss.sss......',
  'rrrrrrrrrrrrrrrrrrrrrrrrrrrr',
  '.rrrrrrrrrrrrrrrrrrrrrrrrrr.',
  '...rrrrrrrrrrrrrrrrrrrrrr...',
];

/** A band for the regatta: the lake's name, bunting, crossed oars, a crew of four on waves. */
export function drawRegatta() {
  const canvas = new Canvas(WIDTH, HEIGHT, CHALK);
  for (const y of [0, HEIGHT - 1]) canvas.fill(0, y, WIDTH, 1, SLATE);
  canvas.fill(0, 1, WIDTH, 1, ORANGE);
  centre(canvas, 4, lettered('TARN'), { '#': DEEP });
  centre(canvas, 13, lettered('ELLERBY'), { '#': LAKE });
  drawBunting(canvas, 22);
  drawOars(canvas, 30);
  drawWaves(canvas, 49);
  centre(canvas, 44, BOAT, { o: ORANGE, s: SLATE, r: REED });
  return canvas;
}

function centre(canvas, y, rows, colours) {
  canvas.put(Math.floor((WIDTH - rows[0].length) / 2), y, rows, colours);
}

function drawBunting(canvas, y) {
  canvas.fill(0, y, WIDTH, 1, SLATE);
  [ORANGE, LAKE, REED, LAKE, ORANGE].forEach((colour, i) => {
    canvas.put(8 * i + 1, y + 1, FLAG, { '#': colour });
  });
}

/** Two oars crossed: shafts two knots wide, blades five long. */
function drawOars(canvas, y) {
  for (let step = 0; step < 12; step++) {
    const blade = step < 4;
    const left = 14 + step - (blade ? 1 : 0);
    const right = WIDTH - 2 - left + (blade ? -1 : 0);
    const width = blade ? 3 : 2;
    canvas.fill(left, y + step, width, 1, blade ? ORANGE : SLATE);
    canvas.fill(right, y + step, width, 1, blade ? DEEP : SLATE);
  }
}

function drawWaves(canvas, y) {
  for (let row = y; row < HEIGHT - 1; row++) {
    for (let x = 0; x < WIDTH; x++) {
      const crest = y + 1.2 - 1.2 * Math.cos((2 * Math.PI * (x + 0.5)) / 10);
      if (row < crest) continue;
      canvas.set(x, row, row >= crest + 4 ? DEEP : LAKE);
    }
  }
}
