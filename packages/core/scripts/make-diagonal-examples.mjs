// node packages/core/scripts/make-diagonal-examples.mjs: makes the diagonal patterns among the
// examples by their rules. Build the package first.
import { writeFileSync } from 'node:fs';
import {
  chevrons,
  diagonalStripes,
  diamonds,
  printDiagonalDocument,
  printDiagonalText,
  wave,
  zigzag,
} from '@halfhitch/core';

const BLUE = { key: 'b', hex: '#1f6fb2', name: 'lake blue' };
const ORANGE = { key: 'o', hex: '#e8742c', name: 'buoy orange' };
const GREEN = { key: 'g', hex: '#4d8b5a', name: 'reed green' };
const CHALK = { key: 'w', hex: '#f4f1e8', name: 'chalk' };
const SLATE = { key: 's', hex: '#3d4a57', name: 'slate' };

const FILES = {
  'buoy-diamonds.txt': printDiagonalText(diamonds({ strings: 12, colours: [ORANGE, CHALK, BLUE] })),
  'ellerby-stripes.txt': printDiagonalText(
    diagonalStripes({ strings: 10, colours: [BLUE, CHALK, GREEN, SLATE, ORANGE] }),
  ),
  'lake-wave.txt': printDiagonalText(
    wave({ strings: 16, colours: [BLUE, CHALK, GREEN, SLATE], swing: 4 }),
  ),
  'mooring-zigzag.json': printDiagonalDocument(
    zigzag({ strings: 9, colours: [SLATE, ORANGE, CHALK] }),
  ),
  'pennant-chevrons.txt': printDiagonalText(
    chevrons({ strings: 13, colours: [BLUE, CHALK, ORANGE] }),
  ),
};

for (const [name, text] of Object.entries(FILES)) {
  writeFileSync(new URL(`../../../examples/${name}`, import.meta.url), text);
}
