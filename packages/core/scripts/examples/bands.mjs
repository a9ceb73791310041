import { Canvas } from './canvas.mjs';
import { CHALK, DEEP, LAKE, ORANGE, REED, SLATE } from './colours.mjs';
import { LETTER_HEIGHT, lettered } from './letters.mjs';

/** Waves running down a band sixteen knots wide; the forty rows repeat. */
export function drawWaveBand() {
  const canvas = new Canvas(16, 40, DEEP);
  for (let y = 0; y < canvas.height; y++) {
    const shore = 8 + 3.5 * Math.sin((2 * Math.PI * y) / 20);
    for (let x = 0; x < canvas.width; x++) {
      const beyond = x + 0.5 - shore;
      if (beyond > 4) canvas.set(x, y, REED);
      else if (beyond > 2) canvas.set(x, y, CHALK);
      else if (beyond > -2) canvas.set(x, y, LAKE);
      else if (beyond > -3) canvas.set(x, y, CHALK);
    }
  }
  return canvas;
}

/** A boat's name along the band: it reads from left to right with the band turned to the left. */
export function drawBoatName(word) {
  const rows = lettered(word);
  const length = rows[0].length;
  const margin = 4;
  const canvas = new Canvas(LETTER_HEIGHT + 4, length + 2 * margin, CHALK);
  canvas.fill(0, 0, 1, canvas.height, LAKE);
  canvas.fill(canvas.width - 1, 0, 1, canvas.height, LAKE);
  for (let along = 0; along < length; along++) {
    for (let across = 0; across < LETTER_HEIGHT; across++) {
      if (rows[across][along] !== '#') continue;
      canvas.set(canvas.width - 3 - across, margin + along, SLATE);
    }
  }
  for (const y of [0, 1, canvas.height - 2, canvas.height - 1]) {
    canvas.fill(0, y, canvas.width, 1, y % 2 === 0 ? ORANGE : LAKE);
  }
  return canvas;
}
