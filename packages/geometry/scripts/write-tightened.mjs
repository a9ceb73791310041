// Works the tight hitches out afresh and writes src/knot/tightened/equal.data.ts and ratios.data.ts.
// Run after a build: node packages/geometry/scripts/write-tightened.mjs
import { packMotion } from '../dist/knot/tightened/coding.js';
import { RATIOS } from '../dist/relax/grid.js';
import { tightenHalves } from '../dist/relax/hitches.js';
import { literal, writeData } from './write-data.mjs';

const texts = RATIOS.map((ratio) => {
  const of = (pairing) => {
    const { first, second } = tightenHalves(pairing, ratio);
    return { first: packMotion(first), second: packMotion(second) };
  };
  return [ratio, { same: of('same'), opposite: of('opposite') }];
});
const type = "import type { HitchTexts } from './curves.js';";
const by = 'scripts/write-tightened.mjs';
writeData(
  'equal',
  by,
  `${type}\n
export const EQUAL: HitchTexts = ${literal(texts.find(([ratio]) => ratio === 1)[1])};`,
);
writeData(
  'ratios',
  by,
  `${type}\n
/** For each ratio held/tying. */
export const HITCH_RATIOS: readonly (readonly [number, HitchTexts])[] = ${literal(
    texts.filter(([ratio]) => ratio !== 1),
  )};`,
);
