// Runs core's tests for Stryker in one process that goes on from mutant to mutant. Stryker's runner
// for Vitest starts a worker and loads all of core anew for each of them, which takes ten times as
// long as the tests do.
import { join, relative, sep } from 'node:path';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { createServer, createServerModuleRunner } from 'vite';
import { filesBelow } from '../../scripts/lib/repository.mjs';
import { isAsked } from './test-files.mjs';

/** What the instrumented code reads: which mutant is active, and where hits are counted. */
const switches = {};
globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] = switches;

class CollectedTests {
  tests = [];
  /** Whether what is loaded was loaded while a mutant was active. */
  isStale = false;

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    // Stryker runs this in a copy of the project, whose sources hold every mutant.
    const root = process.cwd();
    const beside = (name) => join(root, 'testing', 'mutation', name);
    this.server = await createServer({
      root,
      configFile: false,
      appType: 'custom',
      logLevel: 'error',
      server: { middlewareMode: true, hmr: false, ws: false, watch: null },
      optimizeDeps: { noDiscovery: true },
      resolve: {
        alias: [
          { find: /^vitest$/, replacement: beside('vitest.mjs') },
          { find: /^fast-check$/, replacement: beside('fast-check.ts') },
        ],
      },
    });
    this.modules = createServerModuleRunner(this.server.environments.ssr, { hmr: false });
    this.folder = join(root, 'packages', 'core', 'test');
    this.files = filesBelow(this.folder).filter(
      (file) =>
        file.endsWith('.test.ts') && isAsked(relative(this.folder, file).split(sep).join('/')),
    );
    await this.load();
  }

  async dispose() {
    await this.modules?.close();
    await this.server?.close();
  }

  /** Loads the sources and the tests anew, and collects the tests. */
  async load() {
    const timeOf = new Map(this.tests.map(({ id, time }) => [id, time]));
    this.modules.clearCache();
    await this.modules.import('/packages/core/src/index.ts');
    const atLoad = { ...switches.mutantCoverage?.static };
    const { collected } = await this.modules.import('/testing/mutation/vitest.mjs');
    const tests = [];
    for (const fileName of this.files) {
      collected.length = 0;
      await this.modules.import(fileName);
      const place = relative(this.folder, fileName);
      for (const { name, run } of collected) {
        const id = `${place} › ${name}`;
        tests.push({ id, fileName, run, time: timeOf.get(id) ?? 0 });
      }
    }
    this.tests = tests;
    // What tests prepare while they are loaded is prepared without a mutant. Only what the sources
    // do then has to be loaded anew for a mutant to have effect.
    if (switches.mutantCoverage !== undefined) switches.mutantCoverage.static = atLoad;
  }

  async dryRun() {
    const results = [];
    for (const test of this.tests) {
      switches.currentTestId = test.id;
      const started = performance.now();
      results.push(await resultOf(test));
      test.time = performance.now() - started;
      results.at(-1).timeSpentMs = test.time;
    }
    switches.currentTestId = undefined;
    return {
      status: DryRunStatus.Complete,
      tests: results,
      mutantCoverage: switches.mutantCoverage,
    };
  }

  async mutantRun({ activeMutant, mutantActivation, reloadEnvironment, testFilter, hitLimit }) {
    switches.hitCount = 0;
    switches.hitLimit = hitLimit;
    const isStatic = mutantActivation === 'static';
    const results = [];
    try {
      if (isStatic) switches.activeMutant = activeMutant.id;
      if (isStatic || reloadEnvironment || this.isStale) await this.load();
      this.isStale = isStatic;
      switches.activeMutant = activeMutant.id;
      for (const test of this.asked(testFilter)) {
        results.push(await resultOf(test));
        if (results.at(-1).status === TestStatus.Failed) break;
      }
    } catch (error) {
      // The mutant keeps the sources from being loaded, which no test could miss.
      this.isStale = true;
      results.push(failed(this.tests[0], error));
    } finally {
      switches.activeMutant = undefined;
    }
    const result = { status: DryRunStatus.Complete, tests: results };
    return toMutantRunResult(determineHitLimitReached(switches.hitCount, hitLimit) ?? result);
  }

  /** The tests that reach a mutant, the quickest first: the first that fails ends the run. */
  asked(testFilter) {
    const wanted = testFilter === undefined ? null : new Set(testFilter);
    return this.tests
      .filter(({ id }) => wanted?.has(id) ?? true)
      .sort((one, other) => one.time - other.time);
  }
}

async function resultOf(test) {
  try {
    await test.run();
  } catch (error) {
    return failed(test, error);
  }
  const { id, fileName } = test;
  return { id, name: id, fileName, timeSpentMs: 0, status: TestStatus.Success };
}

function failed({ id, fileName }, error) {
  const failureMessage = String(error?.message ?? error).slice(0, 500);
  return { id, name: id, fileName, timeSpentMs: 0, status: TestStatus.Failed, failureMessage };
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.TestRunner, 'collected', CollectedTests),
];
