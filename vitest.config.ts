import { defineConfig } from 'vitest/config';
import { sourceAliases } from './scripts/lib/source-aliases.mjs';

const seeded = {
  globalSetup: ['testing/fast-check-seed.ts'],
  setupFiles: ['testing/use-fast-check-seed.ts'],
};

export default defineConfig({
  resolve: { alias: sourceAliases },
  test: {
    passWithNoTests: true,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          ...seeded,
          include: ['packages/*/test/**/*.test.ts'],
          exclude: ['packages/*/test/browser/**'],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          globalSetup: [...seeded.globalSetup, 'testing/app-address.ts'],
          setupFiles: seeded.setupFiles,
          include: ['packages/{simulator,app}/test/browser/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: { name: 'tooling', include: ['scripts/test/**/*.test.mjs'], testTimeout: 60_000 },
      },
    ],
  },
});
