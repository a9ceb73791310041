import type { TestProject } from 'vitest/node';
import { serveApp } from '../scripts/lib/app-server.mjs';
import { ensureBuilt } from '../scripts/lib/build-targets.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served during the run, with a closing slash. */
    appAddress: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await ensureBuilt('app');
  const served = await serveApp();
  project.provide('appAddress', served.address);
  return served.close;
}
