import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runNode } from './child-process.mjs';
import { packageFolder, ROOT } from './repository.mjs';

export const PICTURES = join(ROOT, 'docs', 'pictures');

/** Examples that `halfhitch render` draws, by their names. */
const RENDERED = ['buoy-diamonds', 'heron-pennant'];

const BLUE = '#1f6fb2';
const ORANGE = '#e8742c';

/** One lead over three base strings, two rows: what happens at a turn and nothing else. */
const TURN = `b ${BLUE} lake blue\n\nbbb\nbbb\n`;

/** Blue for two knots, then orange: a colour change within the row. */
const CHANGE = `b ${BLUE} lake blue\no ${ORANGE} buoy orange\n\nbboo\n`;

/** Orange at the last knot of a row, and from the first knot of a row. */
const LAST = `b ${BLUE} lake blue\no ${ORANGE} buoy orange\n\nbbo\n`;
const AT_TURN = `b ${BLUE} lake blue\no ${ORANGE} buoy orange\n\nbbb\nooo\n`;

/** Six strings, one of them orange, going right and back: which neighbours a row ties together. */
const LATTICE = `pattern diagonal\nb ${BLUE} lake blue\nc #f4f1e8 chalk\no ${ORANGE} buoy orange\n\nobcbcb\n\n\\ \\ \\\n \\ \\\n\\ \\ \\\n \\ \\\n`;

/** Pictures of the documentation as our own renderers draw them: markup by the file's name. */
export async function docPictures() {
  const entry = (library, file) =>
    import(pathToFileURL(join(packageFolder(library), 'dist', file)).href);
  const { KNOT_KINDS, planAlpha, readDiagonalText, readTextChart } = await entry(
    'core',
    'index.js',
  );
  const { knotPicture, patternPicture, rowPicture } = await entry('simulator', 'picture.js');

  const pictures = new Map();
  for (const name of RENDERED) pictures.set(name, await rendered(name));

  const colours = { tyingColour: BLUE, heldColour: '#e9e2d0', width: 150, height: 170 };
  for (const view of ['front', 'back']) {
    for (const kind of KNOT_KINDS) {
      pictures.set(`knot-${kind}-${view}`, knotPicture({ ...colours, kind, view }));
    }
    const label = `A forward half hitch, seen from the ${view}`;
    pictures.set(`half-hitch-${view}`, knotPicture({ ...colours, moment: 1, view, label }));
  }

  const turn = (edge) => planAlpha(readTextChart(TURN).chart, { edge });
  for (const view of ['front', 'back']) {
    pictures.set(
      `turn-straight-${view}`,
      rowPicture(turn('straight'), 1, {
        view,
        label: `A turn with a straight edge, seen from the ${view}`,
      }),
    );
  }
  pictures.set(
    'turn-wrapped-front',
    rowPicture(turn('wrapped'), 1, { label: 'A turn with a wrapped edge, seen from the front' }),
  );

  const change = planAlpha(readTextChart(CHANGE).chart);
  const changing = (knots, view, label) => rowPicture(change, 0, { knots, view, label });
  pictures.set(
    'change-half-front',
    changing(2.5, 'front', 'The new lead has tied the first half of its first knot'),
  );
  pictures.set(
    'change-front',
    changing(3, 'front', 'The second half has locked the old lead, seen from the front'),
  );
  pictures.set('change-back', changing(3, 'back', 'The same, seen from the back'));

  const last = planAlpha(readTextChart(LAST).chart);
  const atTurn = planAlpha(readTextChart(AT_TURN).chart);
  for (const view of ['front', 'back']) {
    const label = `A colour change at the last knot, seen from the ${view}`;
    pictures.set(`change-last-${view}`, rowPicture(last, 0, { view, label }));
    const other = `A colour change at the turn, one knot later, seen from the ${view}`;
    pictures.set(`change-turn-${view}`, rowPicture(atTurn, 1, { knots: 1, view, label: other }));
  }

  const pattern = readDiagonalText(LATTICE);
  pictures.set('lattice-front', patternPicture(pattern, { width: 220 }));
  return pictures;
}

async function rendered(name) {
  const tool = join(packageFolder('cli'), 'dist', 'halfhitch.js');
  const file = join(ROOT, '.cache', `${name}.svg`);
  await runNode([tool, 'render', join(ROOT, 'examples', `${name}.txt`), '-o', file], {
    output: 'on failure',
  });
  return readFileSync(file, 'utf8');
}

/** Compares the pictures kept in docs/pictures with those drawn now, or writes them; what differs. */
export async function checkDocPictures({ write = false } = {}) {
  const pictures = await docPictures();
  const differing = [];
  for (const [name, markup] of pictures) {
    const file = join(PICTURES, `${name}.svg`);
    if (write) writeFileSync(file, markup);
    else if (!existsAs(file, markup)) differing.push(`${name}.svg is not as it is drawn now`);
  }
  for (const file of readdirSync(PICTURES)) {
    if (!pictures.has(file.replace(/\.svg$/, ''))) differing.push(`${file} is drawn by nothing`);
  }
  return differing;
}

function existsAs(file, markup) {
  try {
    return readFileSync(file, 'utf8') === markup;
  } catch {
    return false;
  }
}
