// npm run build [-- TARGET ...]: builds what is stale; all targets when none is named.
import './lib/require-node.mjs';
import { ensureBuilt, TARGET_NAMES, writtenBy } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';

await runMain(async (args) => {
  const unknown = args.find((name) => !TARGET_NAMES.includes(name));
  if (unknown) {
    throw new Refusal(
      `There is no target "${unknown}": choose from ${TARGET_NAMES.join(', ')}.`,
      2,
    );
  }
  await ensureInstalled();
  const targets = args.length > 0 ? args : TARGET_NAMES;
  const built = await ensureBuilt(...targets);
  for (const name of new Set(targets)) {
    const { title, written } = writtenBy(name);
    say(built.includes(name) ? `Built: ${title}` : `Up to date: ${title}`);
    for (const line of written) say(`  ${line}`);
  }
});
