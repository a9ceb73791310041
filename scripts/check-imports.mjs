// npm run check:imports: app, cli -> simulator -> geometry -> core, and pure packages pure.
import './lib/require-node.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { ROOT } from './lib/repository.mjs';

await runMain(async () => {
  await ensureInstalled();
  const { checkBoundaries } = await import('./imports/check-boundaries.mjs');
  const breaches = checkBoundaries(ROOT);
  if (breaches.length > 0) throw new Refusal(breaches.join('\n'));
});
