// Adds the curves for strings of unequal thickness, which most uses do without, to those that are
// always there. Imported for that effect alone, and listed in package.json for it.
import { hitchStore } from './curves.js';
import { overStore } from './over.js';
import { OVER_RATIOS } from './over-ratios.data.js';
import { HITCH_RATIOS } from './ratios.data.js';

for (const [ratio, texts] of HITCH_RATIOS) hitchStore.add(ratio, texts);
for (const [ratio, texts] of OVER_RATIOS) overStore.add(ratio, texts);
