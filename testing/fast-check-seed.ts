import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    fastCheckSeed: number;
  }
}

/** One seed for a whole run, printed so that a failed run can be had again with FC_SEED. */
function chooseSeed(): number {
  const asked = process.env['FC_SEED'];
  if (asked === undefined || asked === '') return Math.floor(Math.random() * 0x7fffffff);
  const seed = Number(asked);
  if (!Number.isInteger(seed)) throw new Error(`FC_SEED must be a whole number, not "${asked}".`);
  return seed | 0;
}

export default function setup(project: TestProject): void {
  const seed = chooseSeed();
  project.provide('fastCheckSeed', seed);
  console.log(`fast-check seed: ${seed} (repeat this run with FC_SEED=${seed})`);
}
