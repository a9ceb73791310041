import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CHART_LIMITS,
  planAlpha,
  printChartDocument,
  printPlan,
  printTextChart,
  readChart,
  readPlan,
} from '../../src/index.js';
import { anyChartOfFile } from '../support/any-chart-file.js';
import { readOrRefusal } from '../support/refusal.js';
import { spoil } from '../support/spoil.js';
import { pngOf, writePng } from '../support/write-png.js';

/** Reads bytes as a chart: it must end in a chart within the limits, or in an InputError. */
function expectChartOrRefusal(bytes: Uint8Array): void {
  const outcome = readOrRefusal(() => readChart(bytes, 'fuzz'));
  if (outcome instanceof Error) {
    expect(outcome.message).toContain('fuzz');
    expect(outcome.message.length).toBeLessThan(1000);
    return;
  }
  const { rows, columns, colours, cells } = outcome.chart;
  expect(cells).toHaveLength(rows * columns);
  expect(rows).toBeLessThanOrEqual(CHART_LIMITS.maxRows);
  expect(columns).toBeLessThanOrEqual(CHART_LIMITS.maxColumns);
  expect(Math.max(...cells)).toBeLessThan(colours.length);
}

const utf8 = (text: string) => new TextEncoder().encode(text);
const someChart = fc.sample(anyChartOfFile, { numRuns: 1, seed: 7 })[0];

describe('reading any file ends in a chart or in a clear refusal', () => {
  const runs = { numRuns: 500 };

  it('random bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 1, maxLength: 300 }), expectChartOrRefusal),
      runs,
    );
  });

  it('random text', () => {
    const anyText = fc.string({ unit: 'binary', minLength: 1 }).map(utf8);
    fc.assert(fc.property(anyText, expectChartOrRefusal), runs);
  });

  it('text charts, spoilt', () => {
    const file = anyChartOfFile.map((chart) => utf8(printTextChart(chart)));
    fc.assert(fc.property(spoil(file), expectChartOrRefusal), runs);
  });

  it('chart documents, spoilt', () => {
    const file = anyChartOfFile.map((chart) => utf8(printChartDocument(chart)));
    fc.assert(fc.property(spoil(file), expectChartOrRefusal), runs);
  });

  it('pictures, spoilt', () => {
    const samples = Array.from({ length: 99 }, (_, i) => i % 4);
    const palette = [0, 0, 0, 9, 9, 9, 0, 255, 0, 1, 2, 3];
    const file = fc
      .record({ interlaced: fc.boolean(), depth: fc.constantFrom(2, 4, 8) })
      .map((kind) => writePng({ width: 9, height: 11, colourType: 3, samples, palette, ...kind }));
    fc.assert(fc.property(spoil(file), expectChartOrRefusal), runs);
  });

  it('pictures with right checksums and wrong contents', () => {
    const anyHeader = fc
      .tuple(
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom(1, 2, 4, 8, 16, 3),
        fc.constantFrom(0, 2, 3, 4, 6, 1),
        fc.constantFrom(0, 1, 2),
      )
      .map(([width, height, depth, type, interlace]) =>
        Uint8Array.of(0, 0, 0, width, 0, 0, 0, height, depth, type, 0, 0, interlace),
      );
    const part = fc.tuple(
      fc.constantFrom('PLTE', 'tRNS', 'IDAT', 'iCCP', 'tEXt', 'pHYs', 'acTL', 'fdAT'),
      fc.oneof(
        fc.uint8Array({ maxLength: 60 }),
        // A zlib stream with one stored block.
        fc
          .uint8Array({ max: 4, maxLength: 200 })
          .map((data) =>
            Uint8Array.of(0x78, 1, 1, data.length, 0, 255 - data.length, 255, ...data, 0, 0, 0, 0),
          ),
      ),
    );
    fc.assert(
      fc.property(anyHeader, fc.array(part, { maxLength: 5 }), (header, parts) => {
        expectChartOrRefusal(pngOf([['IHDR', header], ...parts, ['IEND', new Uint8Array(0)]]));
      }),
      { numRuns: 1000 },
    );
  });

  it('plans, spoilt', () => {
    const plan = utf8([...printPlan(planAlpha(someChart as never))].join(''));
    fc.assert(
      fc.property(spoil(fc.constant(plan)), (bytes) => {
        readOrRefusal(() => readPlan(new TextDecoder().decode(bytes)));
      }),
      runs,
    );
  });
});
