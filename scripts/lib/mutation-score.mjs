import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { filesBelow, packageFolder, ROOT, readJson } from './repository.mjs';

const KEPT = join(ROOT, 'testing', 'mutation-score.json');
const PAGE = join(ROOT, 'docs', 'quality.md');
const SOURCES = join(packageFolder('core'), 'src');

/** The planners and the verifiers; their sentences are read by people, not by tests. */
const MUTATED = [/^plan\//, /^verify\//, /^diagonal\/(plan|reading)\.ts$/, /^diagonal\/verify\//];
const SENTENCES = /\/messages\.ts$/;

/** A file whose score falls by more than so many points of a hundred fails the run. */
export const MOST_FALL = 1;

/**
 * The files to be mutated, all of them or those that are meant by one of the words: a word that is in
 * their path below core's sources, or the path of a file or folder of the repository.
 */
export function mutatedFiles(words = []) {
  return filesBelow(SOURCES)
    .map((file) => relative(SOURCES, file).split(sep).join('/'))
    .filter((file) => MUTATED.some((place) => place.test(file)) && !SENTENCES.test(file))
    .filter((file) => words.length === 0 || words.some((word) => isMeant(file, word)));
}

function isMeant(file, word) {
  const path = sourceName(word);
  return path === word ? file.includes(word) : file.startsWith(path);
}

/** A path of the repository as one below core's sources. */
function sourceName(path) {
  return path.replace(/^(\.\/)?packages\/core\/src\//, '');
}

/** Files as Stryker is to be given them. */
export function asPaths(files) {
  return files.map((file) => `packages/core/src/${file}`);
}

/** By file: how many of the mutants that could be run were killed, and those that were not. */
export function scoresOf(report, files = mutatedFiles()) {
  return Object.fromEntries(
    Object.entries(report.files)
      // A run that takes over earlier results reports their files too.
      .filter(([path]) => files.includes(sourceName(path)))
      .map(([path, { source, mutants }]) => {
        const killed = mutants.filter(({ status }) => status === 'Killed' || status === 'Timeout');
        const survived = mutants.filter(
          ({ status }) => status === 'Survived' || status === 'NoCoverage',
        );
        return [
          sourceName(path),
          {
            killed: killed.length,
            total: killed.length + survived.length,
            survivors: survived.map((mutant) => inWords(mutant, source)).sort(byLine),
          },
        ];
      })
      // Files of types alone have none.
      .filter(([, { total }]) => total > 0)
      .sort(([one], [other]) => (one < other ? -1 : 1)),
  );
}

function inWords({ location, replacement, status }, source) {
  const { start, end } = location;
  const lines = source.split('\n');
  const first = lines[start.line - 1].slice(
    start.column - 1,
    start.line === end.line ? end.column - 1 : undefined,
  );
  const short = (text) => text.replace(/\s+/g, ' ').slice(0, 90);
  const untested = status === 'NoCoverage' ? '  (no test reaches it)' : '';
  return {
    line: start.line,
    text: `${start.line}:${start.column}  ${short(first)}  ->  ${short(replacement)}${untested}`,
  };
}

function byLine(one, other) {
  return one.line - other.line;
}

/** The scores beside the kept ones, and the files whose score has fallen too far. */
export function compareScores(scores, kept = keptScores().files) {
  const rows = Object.entries(scores).map(([file, { killed, total }]) => {
    const now = percent(killed, total);
    const before = kept[file] === undefined ? undefined : percent(...kept[file]);
    const change = before === undefined ? 0 : now - before;
    const drift = change < -MOST_FALL ? 'fallen' : change > MOST_FALL ? 'risen' : '';
    return { file, killed, total, now, before, drift };
  });
  const width = Math.max(10, ...rows.map(({ file }) => file.length));
  const line = (file, killed, total, now, before, drift) =>
    `${file.padEnd(width)} ${killed.padStart(6)} ${total.padStart(6)} ${now.padStart(8)} ${before.padStart(8)} ${drift}`.trimEnd();
  return {
    text: [
      line('', 'killed', 'of', 'score', 'kept', ''),
      ...rows.map(({ file, killed, total, now, before, drift }) =>
        line(
          file,
          String(killed),
          String(total),
          `${now.toFixed(1)} %`,
          before === undefined ? 'new' : `${before.toFixed(1)} %`,
          drift,
        ),
      ),
    ].join('\n'),
    fallen: rows.filter(({ drift }) => drift === 'fallen').map(({ file }) => file),
  };
}

/** Keeps scores for later runs; those of files that were not run stay, those of lost files go. */
export function keepScores(scores, day) {
  const known = new Set(mutatedFiles());
  const files = Object.fromEntries(
    Object.entries(keptScores().files).filter(([file]) => known.has(file)),
  );
  for (const [file, { killed, total }] of Object.entries(scores)) files[file] = [killed, total];
  const sorted = Object.entries(files).sort(([one], [other]) => (one < other ? -1 : 1));
  const lines = sorted.map(([file, [killed, total]]) => `    "${file}": [${killed}, ${total}]`);
  writeFileSync(KEPT, `{\n  "day": "${day}",\n  "files": {\n${lines.join(',\n')}\n  }\n}\n`);
  writeFileSync(PAGE, withTable(readFileSync(PAGE, 'utf8'), keptScores()));
}

export function keptScores() {
  return existsSync(KEPT) ? readJson(KEPT) : { day: '', files: {} };
}

const BEGIN = '<!-- scores: written by npm run mutation -->';
const END = '<!-- end of scores -->';

/** The page with the table of kept scores in its place. */
export function withTable(page, { day, files }) {
  const rows = Object.entries(files);
  const sum = rows.reduce(([k, t], [, [killed, total]]) => [k + killed, t + total], [0, 0]);
  const row = (file, [killed, total]) =>
    `| ${file} | ${killed} | ${total} | ${percent(killed, total).toFixed(1)} % |`;
  const table = [
    `Scores of ${day}:`,
    '',
    '| file of `packages/core/src` | killed | mutants | score |',
    '| --- | ---: | ---: | ---: |',
    ...rows.map(([file, score]) => row(`\`${file}\``, score)),
    row('**all**', sum),
  ].join('\n');
  const from = page.indexOf(BEGIN);
  const to = page.indexOf(END);
  if (from < 0 || to < from)
    throw new Error(`docs/quality.md has no place for the scores: ${BEGIN}`);
  return `${page.slice(0, from)}${BEGIN}\n${table}\n${page.slice(to)}`;
}

function percent(killed, total) {
  return (100 * killed) / total;
}
