// node packages/core/scripts/draw-examples.mjs: draws the pictures among the example charts.
import { writeFileSync } from 'node:fs';
import { drawBoatName, drawWaveBand } from './examples/bands.mjs';
import { drawRegatta } from './examples/regatta.mjs';

const PICTURES = {
  'kittiwake-name.png': drawBoatName('KITTIWAKE'),
  'regatta.png': drawRegatta(),
  'wave-band.png': drawWaveBand(),
};

for (const [name, canvas] of Object.entries(PICTURES)) {
  writeFileSync(new URL(`../../../examples/${name}`, import.meta.url), canvas.png());
}
