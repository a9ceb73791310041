import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  compareScores,
  keptScores,
  mutatedFiles,
  scoresOf,
  withTable,
} from '../lib/mutation-score.mjs';
import { ROOT } from '../lib/repository.mjs';

const mutant = (status, line = 1) => ({
  status,
  replacement: 'false',
  location: { start: { line, column: 3 }, end: { line, column: 7 } },
});
const report = (...mutants) => ({
  files: { 'packages/core/src/plan/planner.ts': { source: 'a true\nb true\nc true', mutants } },
});

describe('the score of a file', () => {
  it('counts what was killed or never ended, of all that could be run', () => {
    const of = ['Killed', 'Timeout', 'Survived', 'NoCoverage', 'CompileError', 'Ignored'];
    const scores = scoresOf(report(...of.map((status) => mutant(status))));
    expect(scores['plan/planner.ts']).toMatchObject({ killed: 2, total: 4 });
  });

  it('comes with the mutants that survived, where they are and what they are', () => {
    const scores = scoresOf(
      report(mutant('Survived', 3), mutant('Killed', 1), mutant('NoCoverage', 2)),
    );
    expect(scores['plan/planner.ts'].survivors.map(({ text }) => text)).toEqual([
      '2:3  true  ->  false  (no test reaches it)',
      '3:3  true  ->  false',
    ]);
  });

  it('is left out for files that were not asked for', () => {
    expect(scoresOf(report(mutant('Killed')), ['verify/log.ts'])).toEqual({});
  });
});

describe('scores beside those kept', () => {
  const compare = (killed, total) =>
    compareScores({ 'plan/planner.ts': { killed, total } }, { 'plan/planner.ts': [180, 200] });

  it.each([
    [180, 200, '', []],
    [178, 200, '', []],
    [177, 200, 'fallen', ['plan/planner.ts']],
    [183, 200, 'risen', []],
    // More mutants, as many of which survive, are no fall.
    [280, 300, 'risen', []],
  ])('%i of %i', (killed, total, drift, fallen) => {
    const { text, fallen: found } = compare(killed, total);
    expect(found).toEqual(fallen);
    expect(text.split('\n')[1]).toMatch(new RegExp(`90\\.0 % ?${drift}$`));
  });

  it('says what is new', () => {
    const { text, fallen } = compareScores({ 'plan/new.ts': { killed: 0, total: 9 } }, {});
    expect(text).toMatch(/new\.ts +0 +9 +0\.0 % +new$/);
    expect(fallen).toEqual([]);
  });
});

describe('what is kept', () => {
  it('has a score for each file that is mutated and has code, and for no other', () => {
    const known = mutatedFiles();
    const kept = Object.keys(keptScores().files);
    expect(known).toEqual(expect.arrayContaining(kept));
    expect(kept).toEqual(expect.arrayContaining(['plan/planner.ts', 'verify/follower.ts']));
  });

  it('is what the page says', () => {
    const page = readFileSync(join(ROOT, 'docs', 'quality.md'), 'utf8');
    expect(withTable(page, keptScores())).toBe(page);
  });

  it('can be narrowed by words and by paths', () => {
    expect(mutatedFiles(['packages/core/src/verify/log.ts'])).toEqual(['verify/log.ts']);
    expect(mutatedFiles(['planner'])).toEqual(['plan/planner.ts']);
    expect(mutatedFiles().some((file) => file.endsWith('messages.ts'))).toBe(false);
  });
});
