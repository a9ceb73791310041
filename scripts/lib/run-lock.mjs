import {
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { say } from './messages.mjs';
import { CACHE } from './repository.mjs';

const POLL_MS = 100;
const HEARTBEAT_MS = 2_000;
// Long enough for a holder whose machine is busy, short enough to outlast a reused process id.
const ABANDONED_MS = 60_000;

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Removes a lock whose holder is gone; gives the holder's process id, NaN when unknown. */
function clearAbandoned(file) {
  const status = statSync(file, { throwIfNoEntry: false });
  if (!status) return Number.NaN;
  let text = '';
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    return Number.NaN;
  }
  const holder = Number.parseInt(text, 10);
  const silent = Date.now() - status.mtimeMs > ABANDONED_MS;
  // A file without a number was opened a moment ago and is still to be written.
  if (silent || (holder > 0 && !isRunning(holder))) {
    const aside = `${file}.${process.pid}`;
    try {
      renameSync(file, aside);
      // Another waiter may have been quicker, so that this was its new lock: give it back.
      if (readFileSync(aside, 'utf8') !== text) linkSync(aside, file);
      rmSync(aside, { force: true });
    } catch {
      // Gone already.
    }
  }
  return holder;
}

/** Does `work` while no other run of these scripts in this checkout does its own. */
export async function withLock(work, file = join(CACHE, 'lock')) {
  mkdirSync(dirname(file), { recursive: true });
  let told = false;
  for (;;) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      const holder = clearAbandoned(file);
      if (!told && holder > 0 && holder !== process.pid && isRunning(holder)) {
        say(`Waiting for another run (process ${holder}) to finish installing or building.`);
        told = true;
      }
      await delay(POLL_MS);
    }
  }
  const beat = setInterval(() => {
    try {
      utimesSync(file, new Date(), new Date());
    } catch {
      // Removed from outside; nothing to keep alive.
    }
  }, HEARTBEAT_MS);
  const release = () => rmSync(file, { force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    clearInterval(beat);
    process.removeListener('exit', release);
    release();
  }
}
