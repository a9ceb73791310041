// npm run check:types: type-checks every package and every test.
import './lib/require-node.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { checkTypes } from './lib/type-check.mjs';

await runMain(async () => {
  await ensureInstalled();
  if (!(await checkTypes())) throw new Refusal('Type-checking found errors.');
});
