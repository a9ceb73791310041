// npm run check:api [-- --write]: compares the exports of the libraries with the reports kept in
// packages/*/api, or writes the reports anew.
import './lib/require-node.mjs';
import { checkApi } from './lib/api-reports.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  await ensureBuilt('libraries');
  const differing = await checkApi({ write: args.includes('--write') });
  if (differing.length > 0) throw new Refusal(differing.join('\n'));
});
