/**
 * Solving wanted pictures by size, beside plain depth-first search on the same pictures in the same
 * run: the ratio does not depend on the machine. The search goes knot by knot from the top, each
 * string open until a knot needs its colour, and gives up after DFS_SECONDS.
 */
import {
  ANY_COLOUR,
  BARE,
  chevrons,
  diamonds,
  knotsInRow,
  simulateDiagonal,
  zigzag,
} from '@halfhitch/core';
import { solveDiagonal } from '@halfhitch/core/solve';

const SIZES = [
  [10, 30],
  [20, 60],
  [30, 120],
  [40, 200],
];
const COLOURS = 4;
const PICTURES = 3;
const DFS_SECONDS = 5;
const SOLVE_SECONDS = 60;

const colours = ['b', 'o', 'g', 'c'].map((key, at) => ({
  key,
  hex: ['#1f6fb2', '#e8702a', '#4f7942', '#f4f1e8'][at],
  name: '',
}));

function chances(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** What a pattern of random kinds and starting colours shows. */
function atRandom(strings, rows, seed) {
  const next = chances(seed);
  const lattice = { strings, rows, first: 0 };
  const across = Math.floor(strings / 2);
  const knots = new Uint8Array(rows * across).fill(BARE);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      knots[row * across + place] = next(4);
    }
  }
  const start = Uint8Array.from({ length: strings }, () => next(COLOURS));
  return simulateDiagonal({ ...lattice, name: '', colours, start, knots }).picture;
}

/** The same with a patch in the middle in which four colours stand too close. */
function withFault(picture) {
  const across = Math.floor(picture.strings / 2);
  const middle = Math.floor(picture.rows / 2);
  const cells = picture.cells.slice();
  for (let row = middle; row < middle + 6; row++) {
    for (let place = 0; place < knotsInRow(picture, row); place++) {
      cells[row * across + place] = (row * row + 3 * place * row + place) % COLOURS;
    }
  }
  return { ...picture, cells };
}

/**
 * Plain depth-first search with open colours: true, false, or null where its time was over. The
 * colours of the strings at the start are chosen when a knot first needs them.
 */
function depthFirst({ strings, rows, first, cells }, seconds) {
  const across = Math.floor(strings / 2);
  const ends = performance.now() + seconds * 1_000;
  const knots = [];
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow({ strings, first }, row); place++) {
      const colour = cells[row * across + place];
      if (colour !== BARE) knots.push([((first + row) % 2) + 2 * place, colour]);
    }
  }
  const open = strings;
  const colourOf = new Uint8Array(strings).fill(ANY_COLOUR);
  const order = Uint16Array.from({ length: strings }, (_, slot) => slot);
  // For each knot on the way: the way tried, and the string whose colour it chose.
  const tried = new Int8Array(knots.length + 1).fill(-1);
  const chose = new Uint16Array(knots.length + 1).fill(open);
  const swap = (slot) => {
    const left = order[slot];
    order[slot] = order[slot + 1];
    order[slot + 1] = left;
  };
  let at = 0;
  for (let steps = 0; at >= 0; steps++) {
    if ((steps & 4095) === 0 && performance.now() > ends) return null;
    if (at === knots.length) return true;
    const [slot, wanted] = knots[at];
    if (tried[at] >= 0) {
      if ((tried[at] & 1) === 1) swap(slot);
      if (chose[at] !== open) colourOf[chose[at]] = ANY_COLOUR;
      chose[at] = open;
    }
    // Ways 0 and 1: the left string ties; 2 and 3: the right one. Odd ones change places.
    let way = tried[at] + 1;
    for (; way < 4; way++) {
      const string = order[way < 2 ? slot : slot + 1];
      if (wanted === ANY_COLOUR || colourOf[string] === wanted) break;
      if (colourOf[string] !== ANY_COLOUR) continue;
      colourOf[string] = wanted;
      chose[at] = string;
      break;
    }
    if (way === 4) {
      tried[at] = -1;
      at--;
      continue;
    }
    tried[at] = way;
    if ((way & 1) === 1) swap(slot);
    at++;
  }
  return false;
}

async function timed(work) {
  const before = performance.now();
  const result = await work();
  return [(performance.now() - before) / 1_000, result];
}

async function bench(name, picture, options = {}) {
  const [taken, solution] = await timed(() =>
    solveDiagonal(picture, { seconds: SOLVE_SECONDS, nearest: false, ...options }),
  );
  const [searched, found] = await timed(() => depthFirst(picture, DFS_SECONDS));
  const said = found === null ? `none in ${DFS_SECONDS} s` : found ? 'found' : 'proven impossible';
  const ratio = `${found === null ? 'more than ' : ''}${(searched / taken).toFixed(1)} x`;
  const conflict = solution.conflict === null ? '' : `, ${solution.conflict.cells.length} conflict`;
  console.log(
    `${name}: ${solution.status}${conflict} in ${taken.toFixed(3)} s; depth first ${said}, ${searched.toFixed(3)} s (${ratio})`,
  );
}

// The solver is loaded once, before anything is timed.
await solveDiagonal(atRandom(6, 6, 1));
for (const [strings, rows] of SIZES) {
  for (let seed = 1; seed <= PICTURES; seed++) {
    await bench(`${strings} x ${rows} random ${seed}`, atRandom(strings, rows, seed));
  }
  await bench(`${strings} x ${rows} impossible`, withFault(atRandom(strings, rows, 1)));
  for (const [name, rule] of Object.entries({ chevrons, diamonds, zigzag })) {
    const few = colours.slice(0, 3);
    const { picture } = simulateDiagonal(rule({ strings, colours: few, rows }));
    await bench(`${strings} x ${rows} ${name}`, picture);
  }
  const faulty = withFault(atRandom(strings, rows, 1));
  const [taken, { wrong, atLeastWrong }] = await timed(() =>
    solveDiagonal(faulty, { seconds: SOLVE_SECONDS / 3, explain: false }),
  );
  console.log(
    `${strings} x ${rows} nearest to the impossible one: ${wrong.length} knots differ, at least ${atLeastWrong} must; ${taken.toFixed(1)} s`,
  );
}
