// Works the clove hitches tied over an old lead out afresh and writes src/knot/tightened/over.data.ts.
// Run after a build: node packages/geometry/scripts/write-over.mjs
import { writeFileSync } from 'node:fs';
import { pack } from '../dist/knot/tightened/coding.js';
import { tightening } from '../dist/knot/tightened/curves.js';
import { tightenOver } from '../dist/relax/caught.js';
import { RATIOS } from '../dist/relax/grid.js';

const texts = RATIOS.map((ratio) =>
  pack(tightenOver(ratio, tightening('same', 'first', ratio).at(-1))),
);
writeFileSync(
  new URL('../src/knot/tightened/over.data.ts', import.meta.url),
  `// Written by scripts/write-over.mjs; not to be edited. One text for each ratio of RATIOS.
export const PACKED_OVER: readonly string[] = [
${texts.map((text) => `  '${text}',`).join('\n')}
];
`,
);
