import { spawnSync } from 'node:child_process';
import { plainEnvironment } from './environment.mjs';
import { pinnedPnpm } from './pnpm.mjs';
import { ROOT } from './repository.mjs';

/** Exit code when the registry gives no answer: neither good nor bad. */
export const NO_ANSWER = 3;

const SEVERITIES = ['critical', 'high', 'moderate', 'low', 'info'];

/**
 * What an audit of the package manager says, from what it printed: `known` weaknesses, or `silent`
 * with the reason when the registry did not answer. Anything that cannot be understood counts as
 * silence, never as an all-clear.
 */
export function readAudit(printed) {
  let answer;
  try {
    answer = JSON.parse(printed);
  } catch {
    return { silent: 'what it printed is no JSON' };
  }
  if (answer?.error !== undefined) {
    // The message names the address of the registry, which is nobody's business.
    const status = /responded with (\d{3})/.exec(answer.error.message ?? '')?.[1];
    return { silent: `it answered ${status ?? answer.error.code ?? 'with an error'}` };
  }
  const counts = answer?.metadata?.vulnerabilities;
  if (typeof counts !== 'object' || counts === null) return { silent: 'its answer has no counts' };
  const known = Object.values(answer.advisories ?? {})
    .map(({ module_name: name, severity, title, findings = [] }) => ({
      name,
      severity,
      title,
      versions: [...new Set(findings.map(({ version }) => version))].join(', '),
    }))
    .sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
  const counted = SEVERITIES.reduce((sum, severity) => sum + (counts[severity] ?? 0), 0);
  if (counted > 0 && known.length === 0) return { silent: 'it counts weaknesses but names none' };
  return { known };
}

/** Asks the registry that this machine is set up for. */
export function audit({ shippedOnly }) {
  const { stdout } = spawnSync(
    'npx',
    ['--yes', pinnedPnpm(), 'audit', '--json', ...(shippedOnly ? ['--prod'] : [])],
    { cwd: ROOT, encoding: 'utf8', env: plainEnvironment(), maxBuffer: 64 * 1024 * 1024 },
  );
  return readAudit(stdout ?? '');
}
