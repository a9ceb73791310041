import { describe, expect, test } from 'vitest';
import { readServeOptions } from '../lib/app-server.mjs';
import { findChromium } from '../lib/chromium.mjs';
import { plainEnvironment } from '../lib/environment.mjs';
import { addressesIn } from '../lib/lockfile.mjs';
import { explainPnpmFailure, pinnedPnpm } from '../lib/pnpm.mjs';
import { readTotals } from '../lib/run-vitest.mjs';
import { readTestParts } from '../lib/test-parts.mjs';

describe('npm start', () => {
  test.each([
    [[], { port: undefined, open: false }],
    [['--port', '8080'], { port: 8080, open: false }],
    [['--open', '--port=65535'], { port: 65535, open: true }],
  ])('reads %j', (args, options) => expect(readServeOptions(args)).toEqual(options));

  test.each([
    [['--port']],
    [['--port', '']],
    [['--port', '0']],
    [['--port', '65536']],
    [['--port', '80.5']],
    [['--port=1e3']],
    [['8080']],
  ])('refuses %j', (args) => expect(() => readServeOptions(args)).toThrow(/--port/));
});

describe('npm test', () => {
  const all = ['unit', 'browser', 'tooling'];
  test.each([
    [[], { checks: true, projects: all, rest: [] }],
    [['unit'], { checks: false, projects: ['unit'], rest: [] }],
    [['checks'], { checks: true, projects: [], rest: [] }],
    [['unit', 'packages/core'], { checks: false, projects: ['unit'], rest: ['packages/core'] }],
    [['-t', 'unit'], { checks: false, projects: all, rest: ['-t', 'unit'] }],
  ])('reads %j', (args, parts) => expect(readTestParts(args)).toEqual(parts));

  test('counts a file that did not load as a failure', () => {
    const testResults = [
      { status: 'failed', assertionResults: [] },
      { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] },
    ];
    const results = { numPassedTests: 1, numFailedTests: 1, numPendingTests: 0, testResults };
    expect(readTotals(results)).toEqual({ passed: 1, failed: 2, skipped: 0 });
    expect(readTotals({})).toEqual({ passed: 0, failed: 0, skipped: 0 });
  });
});

test('a process inside npm gets a plain environment, with what the person set for npm', () => {
  const kept = {
    PATH: '/bin',
    NPM_CONFIG_REGISTRY: 'upper',
    npm_config_registry: 'lower',
    npm_config_https_proxy: 'proxy',
    npm_config_userconfig: 'file',
  };
  const dropped = {
    INIT_CWD: '/somewhere',
    npm_lifecycle_event: 'test',
    npm_package_name: 'halfhitch-workspace',
    npm_config_loglevel: 'silent',
    npm_config_local_prefix: '/somewhere',
    npm_config_workspace: 'a',
    npm_config_user_agent: 'npm',
  };
  expect(plainEnvironment({ ...kept, ...dropped })).toEqual(kept);
});

test('addresses in a lock file are found by line', () => {
  const lock = 'a@1:\n  resolution: {integrity: sha512-x}\nb@1:\n  resolution: {tarball: b.tgz}\n';
  expect(addressesIn(lock)).toEqual(['pnpm-lock.yaml:4: resolution: {tarball: b.tgz}']);
  expect(addressesIn('c: https://example.org/c')).toHaveLength(1);
});

describe('a failed install is explained', () => {
  test.each([
    ['npm error code ENOTFOUND', /network/],
    ['ERR_PNPM_OUTDATED_LOCKFILE  Cannot install', /does not match a package\.json/],
    ['ENOSPC: no space left', /disk is full/],
    ['something new', /above/],
  ])('%s', (tail, message) => expect(explainPnpmFailure(tail)).toMatch(message));

  test('the pinned version is read without its hash', () => {
    expect(pinnedPnpm()).toMatch(/^pnpm@\d+\.\d+\.\d+$/);
  });
});

describe('Chromium', () => {
  test('is taken from CHROMIUM_PATH first', () => {
    expect(findChromium({ CHROMIUM_PATH: '/a' }, () => true)).toBe('/a');
    expect(() => findChromium({ CHROMIUM_PATH: '/a' }, () => false)).toThrow(/CHROMIUM_PATH/);
  });
  test('is looked for in the usual places', () => {
    expect(findChromium({}, (path) => path === '/usr/bin/chromium')).toBe('/usr/bin/chromium');
    expect(findChromium({}, () => false)).toBeUndefined();
  });
});
