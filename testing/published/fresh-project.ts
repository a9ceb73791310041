import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runProcess } from '../../scripts/lib/child-process.mjs';
import { packPackages } from '../../scripts/lib/packages.mjs';
import { packageFolder, readJson } from '../../scripts/lib/repository.mjs';

/** Packages that are published, by their folders. */
export const PUBLISHED = ['core', 'geometry', 'simulator', 'cli'] as const;

interface PackageJson {
  readonly name: string;
  readonly version: string;
  readonly exports?: Readonly<
    Record<string, string | { readonly types: string; readonly default: string }>
  >;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}

/** One line of a package's exports map, with what the pinned report of it says is exported. */
export interface Entry {
  /** As it is imported, such as `@halfhitch/core/solve`. */
  readonly specifier: string;
  /** File below the package's folder. */
  readonly file: string;
  /** Names that are there when a program runs. */
  readonly values: readonly string[];
  /** Names of types only. */
  readonly types: readonly string[];
}

/** A project far from the repository, with the packed packages installed by npm. */
export class FreshProject {
  readonly folder: string;
  /** Names of the packages of others that are linked into it. */
  readonly linked: readonly string[];

  constructor(folder: string, linked: readonly string[]) {
    this.folder = folder;
    this.linked = linked;
  }

  path(...parts: string[]): string {
    return join(this.folder, ...parts);
  }

  write(name: string, text: string | Uint8Array): string {
    writeFileSync(this.path(name), text);
    return this.path(name);
  }

  manifest(name: string): PackageJson {
    return readJson(this.path('node_modules', name, 'package.json')) as PackageJson;
  }

  /** Every code entry of the installed libraries. */
  entries(): Entry[] {
    return PUBLISHED.flatMap((folder) => {
      const { name } = readJson(join(packageFolder(folder), 'package.json')) as PackageJson;
      const { exports = {} } = this.manifest(name);
      return Object.entries(exports).flatMap(([path, target]) => {
        if (typeof target === 'string') return [];
        const report = Object.entries(exports)
          .find(([, other]) => typeof other === 'object' && other.types === target.types)?.[0]
          .replace(/^\.\/?/, '');
        const file = join(
          packageFolder(folder),
          'api',
          `${report === '' ? 'index' : report}.api.md`,
        );
        const specifier = `${name}${path.slice(1)}`;
        return [{ specifier, file: target.default, ...namesIn(readFileSync(file, 'utf8')) }];
      });
    });
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

const VALUES = /^export (?:declare )?(?:abstract )?(?:class|function|const|let|enum) (\w+)/gm;
const TYPES = /^export (?:declare )?(?:interface|type) (\w+)/gm;
const OTHERS = /^export \{ (\w+) \}$/gm;

/** Classes that are handed on as types only: nothing outside is to be built on them. */
const CLASSES_AS_TYPES = ['StageElement'];

/** The names in a report, whose every export stands at the beginning of a line. */
function namesIn(report: string): Pick<Entry, 'values' | 'types'> {
  const all = (pattern: RegExp) => [...report.matchAll(pattern)].map(([, name]) => name as string);
  const values = [...new Set(all(VALUES))].filter((name) => !CLASSES_AS_TYPES.includes(name));
  const types = [...new Set(all(TYPES))].filter((name) => !values.includes(name));
  types.push(...all(VALUES).filter((name) => CLASSES_AS_TYPES.includes(name)));
  // What another package exports is named without saying what it is: those here are all types.
  return { values: values.sort(), types: [...types, ...all(OTHERS)].sort() };
}

/**
 * Packs what is published and has npm install it, without the network: what the packages depend on
 * is linked to what is installed in the repository, and npm checks that the versions fit.
 */
export async function freshProject(): Promise<FreshProject> {
  const tarballs = await packPackages();
  const needed = whatIsNeeded();
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'halfhitch-fresh-')));
  const project = new FreshProject(folder, [...needed.keys()]);
  project.write('package.json', '{"name":"elsewhere","type":"module","private":true}');
  const quiet = ['--offline', '--no-audit', '--no-fund', '--ignore-scripts', '--no-package-lock'];
  const { code, tail } = await runProcess(
    'npm',
    ['install', ...quiet, ...tarballs, ...needed.values()],
    { cwd: folder, output: 'none' },
  );
  if (code !== 0) throw new Error(`npm could not install what was packed:\n${tail}`);
  return project;
}

/** Folders of what the published packages depend on, and these in turn, by name. */
export function whatIsNeeded(): Map<string, string> {
  const found = new Map<string, string>();
  const add = (from: string, nearby: string): void => {
    const { dependencies, peerDependencies } = readJson(join(from, 'package.json')) as PackageJson;
    for (const name of Object.keys({ ...dependencies, ...peerDependencies })) {
      if (name.startsWith('@halfhitch/') || found.has(name)) continue;
      const folder = realpathSync(join(nearby, name));
      found.set(name, folder);
      // pnpm puts what a package needs beside it.
      add(folder, folder.slice(0, -name.length));
    }
  };
  for (const name of PUBLISHED) {
    add(packageFolder(name), join(packageFolder(name), 'node_modules'));
  }
  return found;
}
