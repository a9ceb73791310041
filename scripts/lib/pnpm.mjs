import { join } from 'node:path';
import { runProcess } from './child-process.mjs';
import { Refusal } from './messages.mjs';
import { ROOT, readJson } from './repository.mjs';

const OFFLINE = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT|ECONNRESET|ENETUNREACH|META_FETCH_FAIL/;
const OUTDATED = /ERR_PNPM_OUTDATED_LOCKFILE|ERR_PNPM_NO_LOCKFILE/;
const FULL = /ENOSPC/;

/** The pinned package manager, as `name@version`, without the hash that may follow it. */
export function pinnedPnpm() {
  const pin = readJson(join(ROOT, 'package.json')).packageManager ?? '';
  const version = /^pnpm@(\d+\.\d+\.\d+)/.exec(pin)?.[1];
  if (!version) throw new Refusal(`package.json: packageManager must pin pnpm, not "${pin}".`);
  return `pnpm@${version}`;
}

/** Why pnpm failed and what to do, from the end of its output. */
export function explainPnpmFailure(tail) {
  if (OUTDATED.test(tail)) {
    return (
      'pnpm-lock.yaml does not match a package.json. ' +
      `Run \`npx --yes ${pinnedPnpm()} install\` and commit the lock file.`
    );
  }
  if (OFFLINE.test(tail)) {
    return (
      'The npm registry could not be reached. The first run, and any run after the dependencies ' +
      'change, needs the network: check the connection and the proxy settings, then try again.'
    );
  }
  if (FULL.test(tail)) return 'The disk is full. Free some space, then try again.';
  return 'pnpm failed; what it said is above.';
}

/** Runs the pinned pnpm, which npx fetches when needed. (corepack is no longer dependable.) */
export async function runPnpm(args, options = {}) {
  const retries = {
    npm_config_fetch_retries: process.env.npm_config_fetch_retries ?? '2',
    npm_config_fetch_retry_mintimeout: process.env.npm_config_fetch_retry_mintimeout ?? '1000',
    npm_config_fetch_retry_maxtimeout: process.env.npm_config_fetch_retry_maxtimeout ?? '5000',
  };
  const { code, tail } = await runProcess('npx', ['--yes', pinnedPnpm(), ...args], {
    ...options,
    env: { ...retries, ...options.env },
  }).catch((error) => {
    if (error.code === 'ENOENT') throw new Refusal('npx was not found; it comes with npm.');
    throw error;
  });
  if (code !== 0) throw new Refusal(explainPnpmFailure(tail));
}
