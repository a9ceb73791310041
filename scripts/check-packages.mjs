// npm run check:packages [-- --write]: packs what is published and looks for faults in it; with
// --write its sizes become those that later ones are compared with.
import './lib/require-node.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { checkPacked, packPackages } from './lib/packages.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  const writeSizes = args.includes('--write');
  const found = await checkPacked(await packPackages(), { writeSizes });
  if (found.length > 0) throw new Refusal(found.join('\n'));
});
