// Works the tight hitches out afresh and writes src/knot/tightened/packed.data.ts.
// Run after a build: node packages/geometry/scripts/write-tightened.mjs
import { writeFileSync } from 'node:fs';
import { pack } from '../dist/knot/tightened/coding.js';
import { RATIOS } from '../dist/relax/grid.js';
import { tightenHalves } from '../dist/relax/hitches.js';

const columns = { same: { first: [], second: [] }, opposite: { first: [], second: [] } };
for (const ratio of RATIOS) {
  for (const pairing of ['same', 'opposite']) {
    const { first, second } = tightenHalves(pairing, ratio);
    columns[pairing].first.push(pack(first));
    columns[pairing].second.push(pack(second));
    console.log(`${pairing} ${ratio}`);
  }
}
const list = (texts) => `[\n${texts.map((text) => `      '${text}',`).join('\n')}\n    ]`;
const body = Object.entries(columns)
  .map(
    ([pairing, halves]) =>
      `  ${pairing}: {\n    first: ${list(halves.first)},\n    second: ${list(halves.second)},\n  },`,
  )
  .join('\n');
writeFileSync(
  new URL('../src/knot/tightened/packed.data.ts', import.meta.url),
  `// Written by scripts/write-tightened.mjs; not to be edited. One text for each ratio of RATIOS.
export const PACKED: Readonly<
  Record<'same' | 'opposite', Readonly<Record<'first' | 'second', readonly string[]>>>
> = {
${body}
};
`,
);
