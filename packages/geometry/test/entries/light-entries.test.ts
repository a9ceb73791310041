import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
// Nothing else here: the whole package would load every ratio.
import { knotPose, loadEveryRatio } from '../../src/knot/index.js';
import { rowPose } from '../../src/row/index.js';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

/** Files that one of the package's files loads with it, relative to its sources. */
function loadedWith(entry: string): string[] {
  const seen = new Set<string>();
  const visit = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    const text = readFileSync(file, 'utf8');
    for (const [statement, from] of text.matchAll(/^(?:import|export)[^;]*?'(\.[^']+)';/gm)) {
      if (/^(?:import|export) type/.test(statement)) continue;
      const path = join(dirname(file), `${from!.slice(0, -3)}.ts`);
      expect(existsSync(path), path).toBe(true);
      visit(path);
    }
  };
  visit(join(SRC, entry));
  return [...seen].map((file) => relative(SRC, file).split('\\').join('/'));
}

it('to show one knot, no solver, no row and no other ratio is loaded', () => {
  const files = loadedWith('knot/index.ts');
  expect(files).toContain('knot/tightened/equal.data.ts');
  expect(files.filter((file) => /\bratios\.data|over|^row|^fabric|^topology/.test(file))).toEqual(
    [],
  );
  expect(files.filter((file) => file.startsWith('relax/'))).toEqual(['relax/grid.ts']);
});

it('for a row or a piece, no other ratio and no solver of whole knots is loaded', () => {
  for (const entry of ['row/index.ts', 'fabric/index.ts', 'plan/index.ts', 'thread/index.ts']) {
    const files = loadedWith(entry);
    expect(files.filter((file) => /\bratios\.data|relax\/(tighten|hitches)/.test(file))).toEqual(
      [],
    );
  }
});

it('strings of unequal thickness are refused with what to do until their curves are loaded', async () => {
  expect(() => knotPose('forward', 1, { heldDiameter: 1.2 })).toThrow(/await loadEveryRatio\(\)/);
  const scene = {
    base: ['b'],
    knots: [{ column: 0, kind: 'forward', tying: 'a', held: 'b' }],
    heldDiameter: 1.2,
  } as const;
  expect(() => rowPose(scene, 0, 1)).toThrow(/Only knots of strings of one thickness are loaded/);
  await loadEveryRatio();
  expect(knotPose('forward', 1, { heldDiameter: 1.2 }).heldRadius).toBe(0.6);
  expect(rowPose(scene, 0, 1).strands).toHaveLength(2);
});
