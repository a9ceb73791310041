import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { plainEnvironment } from './environment.mjs';
import { Refusal } from './messages.mjs';
import { pinnedPnpm } from './pnpm.mjs';
import { ROOT } from './repository.mjs';

const PAGE = join(ROOT, 'docs', 'licences.md');

/** Licences under which what is published may hold or use the work of others. */
const ALLOWED = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MPL-2.0',
  'Zlib',
]);

const HEAD = `# Licences of what Halfhitch uses

Halfhitch is under the [MIT licence](../LICENSE). What runs with it, in a page or on the command line,
directly or through others:

| package | version | licence |
| --- | --- | --- |
`;

const FOOT = `
Under the MPL 2.0, resvg is used as it is, unchanged, by the command line tool only. Tools that build and
test are not listed; they are in \`pnpm-lock.yaml\`. \`npm run check:licences -- --write\` writes this page.
`;

/** Compares the page of licences with what is installed, or writes it anew; what is wrong. */
export function checkLicences({ write = false } = {}) {
  const used = dependencies();
  const refused = used.filter(({ licence }) => !isAllowed(licence));
  if (refused.length > 0) {
    return refused
      .map(({ name, licence }) => `${name}: the licence ${licence} is not allowed`)
      .join('\n');
  }
  const rows = used.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |\n`);
  const page = `${HEAD}${rows.join('')}${FOOT}`;
  if (write) writeFileSync(PAGE, page);
  else if (!existsSync(PAGE) || readFileSync(PAGE, 'utf8') !== page) {
    return 'docs/licences.md is not up to date: `npm run check:licences -- --write`';
  }
  return '';
}

function dependencies() {
  const { status, stdout } = spawnSync(
    'npx',
    ['--yes', pinnedPnpm(), 'licenses', 'list', '--prod', '--json'],
    { cwd: ROOT, encoding: 'utf8', env: plainEnvironment(), maxBuffer: 64 * 1024 * 1024 },
  );
  if (status !== 0) throw new Refusal('pnpm could not list the licences.');
  return (
    Object.values(JSON.parse(stdout))
      .flat()
      .map(({ name, versions, license }) => ({
        name,
        version: versions.join(', '),
        licence: license,
      }))
      // One binary for each kind of machine; which is installed depends on where.
      .filter(({ name }) => !/^@resvg\/resvg-js-/.test(name))
      .sort((a, b) => (a.name < b.name ? -1 : 1))
  );
}

/** "(MIT AND Zlib)" needs both, "MIT OR GPL-2.0" one. */
function isAllowed(licence) {
  const text = licence.replace(/[()]/g, '');
  if (text.includes(' OR ')) return text.split(' OR ').some(isAllowed);
  return text.split(' AND ').every((part) => ALLOWED.has(part.trim()));
}
