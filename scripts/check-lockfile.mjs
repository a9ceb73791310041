// npm run check:lockfile: no registry addresses in the lock file.
import './lib/require-node.mjs';
import { checkLockfile } from './lib/lockfile.mjs';
import { runMain } from './lib/messages.mjs';

await runMain(checkLockfile);
