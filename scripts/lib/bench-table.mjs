import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, readJson } from './repository.mjs';

const KEPT = join(ROOT, 'testing', 'bench-baseline.json');

/** A ratio that moved by more than this factor is told as drift; runs differ by less. */
const DRIFT = 1.5;

/** The ratios that a bench noted in a file, under its name. */
export function readRatios(file, bench) {
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .trimEnd()
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => ({ bench, ...JSON.parse(line) }));
}

/** The table of all ratios beside the kept ones, and how many have drifted. */
export function benchTable(ratios, kept = keptRatios()) {
  const rows = ratios.map(({ bench, what, ratio }) => {
    const before = kept[bench]?.[what];
    const factor = before === undefined ? Number.NaN : ratio / before;
    const drift = factor > DRIFT ? 'slower' : factor < 1 / DRIFT ? 'faster' : '';
    return { bench, what, ratio, before, drift };
  });
  const width = Math.max(10, ...rows.map(({ bench, what }) => bench.length + what.length + 2));
  const lines = rows.map(
    ({ bench, what, ratio, before, drift }) =>
      `${`${bench}: ${what}`.padEnd(width)} ${shown(ratio)} ${before === undefined ? '     new' : shown(before)} ${drift}`,
  );
  return {
    text: [`${''.padEnd(width)} ${'ratio'.padStart(8)} ${'kept'.padStart(8)}`, ...lines].join('\n'),
    drifted: rows.filter(({ drift }) => drift !== '').length,
  };
}

/** Keeps ratios for later runs to compare with; those of benches that were not run stay. */
export function keepRatios(ratios) {
  const kept = keptRatios();
  for (const { bench } of ratios) kept[bench] = {};
  for (const { bench, what, ratio } of ratios) kept[bench][what] = Number(ratio.toPrecision(3));
  const sorted = Object.fromEntries(Object.entries(kept).sort(([a], [b]) => (a < b ? -1 : 1)));
  writeFileSync(KEPT, `${JSON.stringify(sorted, null, 2)}\n`);
}

function keptRatios() {
  return existsSync(KEPT) ? readJson(KEPT) : {};
}

function shown(ratio) {
  return ratio.toPrecision(3).padStart(8);
}
