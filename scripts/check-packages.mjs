// npm run check:packages: packs what is published and looks for faults in it.
import './lib/require-node.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { checkPacked, packPackages } from './lib/packages.mjs';

await runMain(async () => {
  await ensureInstalled();
  await ensureBuilt('libraries', 'elements', 'cli');
  const found = await checkPacked(await packPackages());
  if (found.length > 0) throw new Refusal(found.join('\n'));
});
