// Works the clove hitches tied over an old lead out afresh and writes
// src/knot/tightened/over-equal.data.ts and over-ratios.data.ts.
// Run after a build with the hitches as they are: node packages/geometry/scripts/write-over.mjs
import '../dist/knot/tightened/every-ratio.js';
import { packMotion } from '../dist/knot/tightened/coding.js';
import { tightening } from '../dist/knot/tightened/curves.js';
import { tightenOver } from '../dist/relax/caught.js';
import { OVER_POINTS, RATIOS } from '../dist/relax/grid.js';
import { literal, writeData } from './write-data.mjs';

const texts = RATIOS.map((ratio) => {
  const curves = tightenOver(ratio, tightening('same', 'first', ratio).at(-1));
  const split = OVER_POINTS * 3;
  return [
    ratio,
    {
      tying: packMotion(curves.map((c) => c.subarray(0, split))),
      caught: packMotion(curves.map((c) => c.subarray(split))),
    },
  ];
});
const type = "import type { OverTexts } from './over.js';";
const by = 'scripts/write-over.mjs';
writeData(
  'over-equal',
  by,
  `${type}\n
export const OVER_EQUAL: OverTexts = ${literal(texts.find(([ratio]) => ratio === 1)[1])};`,
);
writeData(
  'over-ratios',
  by,
  `${type}\n
/** For each ratio held/tying. */
export const OVER_RATIOS: readonly (readonly [number, OverTexts])[] = ${literal(
    texts.filter(([ratio]) => ratio !== 1),
  )};`,
);
