// npm run --silent halfhitch -- ARGUMENTS: the command line tool, rebuilt first when stale.
import './lib/require-node.mjs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { runMain } from './lib/messages.mjs';
import { packageFolder } from './lib/repository.mjs';

await runMain(async (args) => {
  await ensureInstalled();
  await ensureBuilt('cli');
  const tool = join(packageFolder('cli'), 'dist', 'halfhitch.js');
  // npm changes to the repository's root; file names are meant from where the person is.
  if (process.env.npm_lifecycle_event === 'halfhitch' && process.env.INIT_CWD) {
    process.chdir(process.env.INIT_CWD);
  }
  process.argv = [process.execPath, tool, ...args];
  await import(pathToFileURL(tool).href);
});
