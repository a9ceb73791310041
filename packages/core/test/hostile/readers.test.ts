import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { hostileJson } from '../../../../testing/hostile/json.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import { hostileText } from '../../../../testing/hostile/text.js';
import {
  CHART_LIMITS,
  DIAGONAL_LIMITS,
  diagnose,
  InputError,
  JsonText,
  planAlpha,
  planDiagonal,
  printChartDocument,
  printDiagonalDocument,
  printDiagonalPicture,
  printDiagonalPictureDocument,
  printDiagonalPlan,
  printDiagonalText,
  printPlan,
  printTextChart,
  readDiagonalPlan,
  readDiagonalSeen,
  readPatternOrPicture,
  readPlan,
  readSeen,
} from '../../src/index.js';
import { anyChartOfFile } from '../support/any-chart-file.js';
import { anyDiagonalOfFile, anyPictureOfFile } from '../support/any-diagonal-file.js';
import { drawn } from '../support/charts.js';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Reads text as the bytes of a file, which must be left as they were. */
function fromFile<T>(read: (bytes: Uint8Array) => T): (text: string) => T | null {
  return (text) => {
    const bytes = utf8(text);
    const before = bytes.slice();
    const answer = answerOrRefusal(InputError, () => read(bytes));
    // Much quicker than an equality of Vitest, which looks at every byte in turn.
    expect(Buffer.compare(bytes, before)).toBe(0);
    return answer;
  };
}

/** A name that was taken from a file can be shown. */
const NAME = /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}]*$/u;

const readAny = fromFile((bytes) => readPatternOrPicture(bytes, 'hostile'));

function expectWithinLimits(text: string): void {
  const read = readAny(text);
  if (read === null) return;
  const drawing =
    read.kind === 'alpha' ? read.chart : read.kind === 'diagonal' ? read.pattern : read.picture;
  expect(drawing.rows).toBeLessThanOrEqual(CHART_LIMITS.maxRows);
  expect('columns' in drawing ? drawing.columns : drawing.strings).toBeLessThanOrEqual(
    Math.max(CHART_LIMITS.maxColumns, DIAGONAL_LIMITS.maxStrings),
  );
  expect(drawing.name).toMatch(NAME);
  for (const { key, hex, name } of drawing.colours) {
    expect([...key]).toHaveLength(1);
    expect(hex).toMatch(/^#[0-9a-f]{6}$/);
    expect(name).toMatch(NAME);
  }
}

const seenPlan = planAlpha(drawn('aabb', 'aabb', 'bbaa'));
const [a, b] = drawn('aabb', 'aabb', 'bbaa').colours.map(({ hex }) => hex);
const SEEN = `x ${a} first\ny ${b}\n\nxx?y\nx.yy\n\n<\\?>\n<.=-\n\nrow 2 right edge pulls in\nrow 1 knots 5\nrow 3 lead sticks out left\nrow 3 column 2 loop\nrow 1 colours off left\n`;

describe('documents of every kind, made hostile, are read within the limits or refused in plain words', () => {
  const asText: Record<string, fc.Arbitrary<string>> = {
    charts: anyChartOfFile.map(printTextChart),
    'diagonal patterns': anyDiagonalOfFile.map(printDiagonalText),
    'wanted pictures': anyPictureOfFile.map(printDiagonalPicture),
  };
  it.each(Object.entries(asText))('%s as text', (_, valid) => {
    fc.assert(fc.property(hostileText(valid), expectWithinLimits), fuzzRuns(250));
  });

  const asJson: Record<string, fc.Arbitrary<string>> = {
    charts: anyChartOfFile.map(printChartDocument),
    'diagonal patterns': anyDiagonalOfFile.map(printDiagonalDocument),
    'wanted pictures': anyPictureOfFile.map(printDiagonalPictureDocument),
  };
  it.each(Object.entries(asJson))('%s as documents', (_, valid) => {
    fc.assert(fc.property(hostileJson(valid), expectWithinLimits), fuzzRuns(250));
  });

  it('plans', () => {
    const valid = anyChartOfFile.map((chart) => [...printPlan(planAlpha(chart))].join(''));
    fc.assert(
      fc.property(hostileJson(valid), (text) => {
        const plan = answerOrRefusal(InputError, () => readPlan(text));
        expect(plan?.name ?? '').toMatch(NAME);
      }),
      fuzzRuns(200),
    );
  });

  it('plans of diagonal patterns', () => {
    const valid = anyDiagonalOfFile.map((pattern) =>
      [...printDiagonalPlan(planDiagonal(pattern))].join(''),
    );
    fc.assert(
      fc.property(hostileJson(valid), (text) => {
        const plan = answerOrRefusal(InputError, () => readDiagonalPlan(text));
        expect(plan?.name ?? '').toMatch(NAME);
      }),
      fuzzRuns(200),
    );
  });

  it('rows as they were seen', () => {
    const read = fromFile((bytes) => readSeen(bytes, 'seen', seenPlan));
    fc.assert(
      fc.property(hostileText(fc.constant(SEEN)), (text) => {
        const seen = read(text);
        if (seen === null || seen.rows > 8) return;
        answerOrRefusal(InputError, () => diagnose(seenPlan, seen));
      }),
      fuzzRuns(80),
    );
  });

  it('diagonal pieces as they were seen', () => {
    const read = fromFile((bytes) => readDiagonalSeen(bytes, 'seen'));
    const valid = fc.oneof(
      anyPictureOfFile.map(printDiagonalPicture),
      anyDiagonalOfFile.map(printDiagonalText),
    );
    fc.assert(
      fc.property(hostileText(valid), (text) => {
        read(text);
      }),
      fuzzRuns(200),
    );
  });

  it('the example files that come with the project', () => {
    const examples = ['heron-pennant.txt', 'oar-crosses.txt', 'pennant-chevrons.txt'].map((name) =>
      readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8'),
    );
    fc.assert(
      fc.property(hostileText(fc.constantFrom(...examples)), expectWithinLimits),
      fuzzRuns(100),
    );
  });
});

describe('any JSON, made hostile', () => {
  it('is outlined, or refused with a place that lies in the text', () => {
    const valid = fc.json({ maxDepth: 4 }).map((json) => `{"format": "x", "held": ${json}}`);
    fc.assert(
      fc.property(hostileJson(valid), (text) => {
        try {
          new JsonText(text).outline();
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
          const { line = 1, column = 1 } = (error as InputError).place;
          const lines = text.split(/\r\n|\n|\r/u);
          expect(line).toBeLessThanOrEqual(lines.length);
          expect(column).toBeLessThanOrEqual((lines[line - 1] as string).length + 1);
        }
      }),
      fuzzRuns(300),
    );
  });
});
