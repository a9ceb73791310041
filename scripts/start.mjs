// npm start [-- --port NUMBER] [--open]: builds what is stale and serves the app.
import './lib/require-node.mjs';
import { readServeOptions, serveApp } from './lib/app-server.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { runMain } from './lib/messages.mjs';

await runMain(async (args) => {
  const options = readServeOptions(args);
  await ensureInstalled();
  await ensureBuilt('app');
  const { address } = await serveApp(options);
  console.log(`Halfhitch is at ${address}  (Ctrl+C stops it)`);
});
