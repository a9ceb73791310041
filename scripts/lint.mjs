// npm run lint, npm run format: Biome's linter and formatter; --write mends what it can.
import './lib/require-node.mjs';
import { runBiome } from './lib/biome.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  if (!(await runBiome(args))) {
    throw new Refusal('Mend these by hand, or let `npm run format` mend what it can.');
  }
});
