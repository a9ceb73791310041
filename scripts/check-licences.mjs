// npm run check:licences [-- --write]: compares docs/licences.md with what is installed, or writes it.
import './lib/require-node.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { checkLicences } from './lib/licences.mjs';
import { Refusal, runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  const wrong = checkLicences({ write: args.includes('--write') });
  if (wrong !== '') throw new Refusal(wrong);
});
