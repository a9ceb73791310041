import { join } from 'node:path';
import { runNode } from './child-process.mjs';
import { ROOT } from './repository.mjs';

/** Lints and checks the formatting of the whole repository; whether all was well. */
export async function runBiome(args = []) {
  const biome = join(ROOT, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');
  const { code } = await runNode([biome, 'check', ...args, ...pathsOr(args, '.')], {
    output: 'inherit',
  });
  return code === 0;
}

function pathsOr(args, fallback) {
  return args.some((word) => !word.startsWith('-')) ? [] : [fallback];
}
