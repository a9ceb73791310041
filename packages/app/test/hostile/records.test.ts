import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { HOSTILE_VALUES } from '../../../../testing/hostile/json.js';
import { NAMES } from '../../../../testing/hostile/pieces.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import { readSettings } from '../../src/cut/read-settings.js';
import { MOST_LETTERS, settingsFrom, USUAL_SETTINGS } from '../../src/cut/settings.js';
import { paceFrom, readPace } from '../../src/ease/pace.js';
import { choicesFrom } from '../../src/learn/choices.js';
import { StoreError } from '../../src/store/errors.js';
import { progressRecord, readProgress } from '../../src/store/progress-record.js';
import { cellsOf, headOf, readHead, readProject } from '../../src/store/project-record.js';
import { rawText } from '../../src/store/raw.js';
import { paceOf } from '../../src/tie/pace.js';
import { tieSettingsFrom, USUAL_TIE_SETTINGS } from '../../src/tie/settings.js';
import { anyProject, progress } from '../store/samples.js';

type Fields = Record<string, unknown>;

const anyChange = fc.record({
  at: fc.nat(),
  value: fc.constantFrom(...HOSTILE_VALUES),
  name: fc.constantFrom(...NAMES),
  what: fc.constantFrom('value' as const, 'value' as const, 'drop' as const, 'name' as const),
});

/**
 * A record of the storage with one to three of its values replaced, dropped or given another name, at
 * any depth.
 */
function spoilt(record: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  return fc
    .tuple(record, fc.array(anyChange, { minLength: 1, maxLength: 3 }))
    .map(([value, changes]) => {
      const copy = structuredClone(value);
      for (const { at, value: put, name, what } of changes) {
        const places = placesIn(copy);
        if (places.length === 0) return put;
        const [holder, key] = places[at % places.length] as [Fields, string];
        if (what === 'value') holder[key] = put;
        else {
          if (what === 'name' && !Array.isArray(holder)) {
            // A plain assignment would not make a property of the name __proto__.
            Object.defineProperty(holder, name, {
              value: holder[key],
              enumerable: true,
              configurable: true,
              writable: true,
            });
          }
          delete holder[key];
        }
      }
      return copy;
    });
}

function placesIn(value: unknown, depth = 0): [Fields, string][] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  // No record goes deeper; a hostile value put into one may.
  if (depth === 5) return [];
  const fields = value as Fields;
  return Object.keys(fields).flatMap((key) => [
    [fields, key] as [Fields, string],
    ...placesIn(fields[key], depth + 1),
  ]);
}

describe('records that a broken disk or another page may have left', () => {
  it('of projects are read as they can be, or told of as damaged', () => {
    const record = spoilt(
      anyProject.map((project) => ({ head: headOf(project, 3), cells: cellsOf(project) })),
    );
    fc.assert(
      fc.property(record, (kept) => {
        const { head, cells } = (kept ?? {}) as { head?: unknown; cells?: unknown };
        const project = answerOrRefusal(StoreError, () => readProject('a1', readHead(head), cells));
        if (project !== null) {
          // It can be kept again, and is then the same.
          expect(readProject('a1', readHead(headOf(project, 4)), cellsOf(project))).toEqual(
            project,
          );
        }
        expect(() => JSON.parse(rawText(kept))).not.toThrow();
      }),
      fuzzRuns(300),
    );
  });

  it('of progress are read as they can be, or told of as damaged', () => {
    const record = spoilt(fc.constant(progressRecord(progress())));
    fc.assert(
      fc.property(record, (kept) => {
        const read = answerOrRefusal(StoreError, () => readProgress('a1', kept));
        if (read === null) return;
        expect(read.done).toBeGreaterThanOrEqual(0);
        const pace = paceOf(read.times);
        if (pace !== null) expect(Number.isFinite(pace.halfHitch + pace.change)).toBe(true);
      }),
      fuzzRuns(300),
    );
  });

  it('of settings are what they can be, each for itself', () => {
    const usual = {
      cut: USUAL_SETTINGS,
      tie: USUAL_TIE_SETTINGS,
      learn: { language: 'de', hand: 'left', learned: ['strings'] },
      pace: { halfHitch: 3, change: 20 },
    };
    fc.assert(
      fc.property(spoilt(fc.constant(usual)), (kept) => {
        const { cut, tie, learn, pace } = (kept ?? {}) as Fields;
        const settings = answerOrRefusal(StoreError, () => settingsFrom(cut));
        expect(Object.keys(settings ?? {})).toEqual(Object.keys(USUAL_SETTINGS));
        for (const text of Object.values(settings ?? {})) {
          expect(text.length).toBeLessThanOrEqual(MOST_LETTERS);
        }
        const tying = tieSettingsFrom(tie);
        expect(Object.keys(tying)).toEqual(Object.keys(USUAL_TIE_SETTINGS));
        expect(Number.isFinite(tying.rate + tying.rest)).toBe(true);
        const choices = choicesFrom(learn);
        expect(['en', 'de']).toContain(choices.language);
        expect(choices.learned.every((name) => typeof name === 'string')).toBe(true);
        const { halfHitch, change } = paceFrom(pace);
        expect(halfHitch + change).toBeGreaterThan(0);
      }),
      fuzzRuns(300),
    );
  });
});

describe('what is filled in by hand', () => {
  const figure = fc.oneof(
    fc.constantFrom(
      ...['1e999', '-0', 'NaN', 'Infinity', '0x10', '1_0', '٣', '1e3', '', ' ', '9'.repeat(400)],
      ...['\u202e12', '1\u0000', '.', '..', '1..2', '+5', '1,5', '999999999999'],
    ),
    fc.string({ unit: 'binary', maxLength: 14 }),
    fc.double().map(String),
  );

  it('for the cut list is a figure within its limits, or each field says what is wrong', () => {
    const fields = Object.keys(USUAL_SETTINGS) as (keyof typeof USUAL_SETTINGS)[];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...fields), figure), { minLength: 1, maxLength: 6 }),
        (filled) => {
          const read = readSettings({ ...USUAL_SETTINGS, ...Object.fromEntries(filled) });
          if ('errors' in read) {
            for (const words of Object.values(read.errors)) expect(words).toMatch(/[.]$/);
            return;
          }
          const { thread = {}, ...rest } = read.options;
          const figures = [...Object.values(thread), ...Object.values(rest), read.length];
          for (const one of figures) {
            if (typeof one === 'number') expect(Number.isFinite(one)).toBe(true);
          }
        },
      ),
      fuzzRuns(300),
    );
  });

  it('as a pace is within its limits, or nothing', () => {
    fc.assert(
      fc.property(figure, (text) => {
        for (const name of ['halfHitch', 'change'] as const) {
          const read = readPace(name, text);
          if (read !== null) expect(read).toBeLessThanOrEqual(600);
        }
      }),
      fuzzRuns(300),
    );
  });
});
