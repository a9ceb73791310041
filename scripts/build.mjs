// npm run build [-- TARGET ...]: builds what is stale; all targets when none is named.
import './lib/require-node.mjs';
import { ensureBuilt, TARGET_NAMES } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  const unknown = args.find((name) => !TARGET_NAMES.includes(name));
  if (unknown) {
    throw new Refusal(
      `There is no target "${unknown}": choose from ${TARGET_NAMES.join(', ')}.`,
      2,
    );
  }
  await ensureInstalled();
  await ensureBuilt(...(args.length > 0 ? args : TARGET_NAMES));
});
