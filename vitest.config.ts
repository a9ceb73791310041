import { defineConfig } from 'vitest/config';
import { sourceAliases } from './scripts/lib/source-aliases.mjs';

const seeded = {
  globalSetup: ['testing/fast-check-seed.ts'],
  setupFiles: ['testing/use-fast-check-seed.ts'],
};

/** Many times the usual runs of fuzz tests (testing/hostile/runs.ts) take many times as long. */
const FUZZ = Math.max(1, Number(process.env['FUZZ']) || 1);

export default defineConfig({
  resolve: { alias: sourceAliases },
  test: {
    passWithNoTests: true,
    // Browser tests mostly wait for their browser, so none of the cores is left to the runner alone.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          ...seeded,
          include: ['packages/*/test/**/*.test.ts'],
          exclude: ['packages/*/test/browser/**'],
          testTimeout: 60_000 * FUZZ,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          globalSetup: [...seeded.globalSetup, 'testing/app-address.ts'],
          setupFiles: seeded.setupFiles,
          include: ['packages/{simulator,app}/test/browser/**/*.test.ts', 'testing/**/*.test.ts'],
          // A browser that draws 3D in software is slow on a busy machine, and nothing is timed.
          testTimeout: 180_000,
          // A busy machine can keep a browser from seeing a key or a wheel; what is at fault fails twice.
          retry: 1,
          hookTimeout: 120_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
      {
        extends: true,
        test: { name: 'tooling', include: ['scripts/test/**/*.test.mjs'], testTimeout: 60_000 },
      },
    ],
  },
});
