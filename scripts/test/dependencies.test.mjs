import { describe, expect, it } from 'vitest';
import { readAudit } from '../lib/audit.mjs';
import { checkDependencies, notPinned, scriptsAllowed, withoutHash } from '../lib/dependencies.mjs';

const HASH = `sha512-${'A'.repeat(86)}==`;
const LOCK = `lockfileVersion: '9.0'

packages:

  lit@3.3.3:
    resolution: {integrity: ${HASH}}

  '@types/three@0.187.0':
    resolution: {integrity: ${HASH}}
    engines: {node: '>=20'}

snapshots:

  lit@3.3.3: {}
`;

describe('dependencies', () => {
  it('of this repository are pinned, held by hashes, and run nothing as they are installed', () => {
    expect(checkDependencies()).toEqual([]);
  });

  it('are found where a hash is missing or weak', () => {
    expect(withoutHash(LOCK)).toEqual([]);
    expect(withoutHash(LOCK.replace(HASH, 'sha1-abc='))).toEqual([
      'pnpm-lock.yaml: lit@3.3.3 has no SHA-512',
    ]);
    expect(
      withoutHash(LOCK.replace(`{integrity: ${HASH}}\n    engines`, '{}\n    engines')),
    ).toHaveLength(1);
    expect(withoutHash('packages:\n\nsnapshots:\n')).toHaveLength(1);
  });

  it('are found where their versions are a range', () => {
    expect(notPinned({ name: 'a', dependencies: { lit: '3.3.3', b: 'workspace:*' } })).toEqual([]);
    for (const version of ['^3.3.3', '~1.0.0', '*', 'latest', 'git+ssh://x', '>=1.0.0']) {
      expect(notPinned({ name: 'a', devDependencies: { lit: version } })).toHaveLength(1);
    }
  });

  it('are found where one may run scripts', () => {
    expect(scriptsAllowed({ name: 'a' })).toEqual([]);
    expect(scriptsAllowed({ name: 'a', pnpm: { onlyBuiltDependencies: ['x'] } })).toHaveLength(1);
    expect(scriptsAllowed({ name: 'a', pnpm: { dangerouslyAllowAllBuilds: true } })).toHaveLength(
      1,
    );
  });
});

describe('an audit', () => {
  const none = { info: 0, low: 0, moderate: 0, high: 0, critical: 0 };

  it('is an all-clear only where the registry has counted and found none', () => {
    expect(
      readAudit(JSON.stringify({ advisories: {}, metadata: { vulnerabilities: none } })),
    ).toEqual({
      known: [],
    });
    const silent = [
      '',
      'null',
      '{}',
      '{"advisories": {}}',
      '{"error": {"code": "ERR_PNPM_AUDIT_BAD_RESPONSE", "message": "responded with 405: "}}',
      JSON.stringify({ metadata: { vulnerabilities: { ...none, high: 2 } } }),
    ];
    for (const printed of silent) {
      expect(readAudit(printed)).toEqual({ silent: expect.stringMatching(/\S/) });
    }
  });

  it('names what is known, the worst first', () => {
    const of = (severity) => ({
      module_name: severity,
      severity,
      title: 't',
      findings: [{ version: '1.0.0' }],
    });
    const { known } = readAudit(
      JSON.stringify({
        advisories: { 1: of('low'), 2: of('critical') },
        metadata: { vulnerabilities: { ...none, low: 1, critical: 1 } },
      }),
    );
    expect(known.map(({ name }) => name)).toEqual(['critical', 'low']);
    expect(known[0]).toMatchObject({ versions: '1.0.0' });
  });
});
