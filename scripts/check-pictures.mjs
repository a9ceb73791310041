// npm run check:pictures [-- --write]: compares docs/pictures with what our own renderers draw now,
// or writes the pictures anew.
import './lib/require-node.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { checkDocPictures } from './lib/doc-pictures.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  await ensureBuilt('libraries', 'cli');
  const differing = await checkDocPictures({ write: args.includes('--write') });
  if (differing.length > 0) throw new Refusal(differing.join('\n'));
});
