import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakDocument } from '../../../../testing/break-document.js';
import { printChartDocument, readChartDocument } from '../../src/index.js';
import { anyChartOfFile } from '../support/any-chart-file.js';
import { readOrRefusal, refusal } from '../support/refusal.js';

const schema: object = JSON.parse(
  readFileSync(new URL('../../schema/chart-1.schema.json', import.meta.url), 'utf8'),
);
const fitsSchema = new Ajv2020({ strict: true }).compile(schema);

/** What the schema cannot say, and the reader checks. */
const BEYOND_SCHEMA = new Set([
  'key-twice',
  'colour-twice',
  'unknown-key',
  'rows-uneven',
  'marks-uneven',
]);

const HERON = {
  format: 'halfhitch-chart',
  version: 1,
  name: 'Heron',
  colours: [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'w', hex: '#FFF' },
  ],
  rows: ['bbw', 'wbb'],
};
const heron = (change: object) => JSON.stringify({ ...HERON, ...change }, null, 2);

describe('a chart document', () => {
  it('is read', () => {
    expect(readChartDocument(heron({ edge: 'wrapped', knots: ['\\\\\\', '///'] })).chart).toEqual({
      name: 'Heron',
      rows: 2,
      columns: 3,
      edge: 'wrapped',
      colours: [
        { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
        { key: 'w', hex: '#ffffff', name: '' },
      ],
      cells: Uint8Array.of(0, 0, 1, 1, 0, 0),
      knots: Uint8Array.of(0, 0, 0, 1, 1, 1),
    });
  });

  it('is the same after printing and reading, and fits its schema', () => {
    fc.assert(
      fc.property(anyChartOfFile, (chart) => {
        const printed = printChartDocument(chart);
        expect(readChartDocument(printed).chart).toEqual(chart);
        expect(fitsSchema(JSON.parse(printed))).toBe(true);
      }),
    );
  });

  it('is taken by the reader just when it fits the schema, but for what a schema cannot say', () => {
    let refused = 0;
    fc.assert(
      fc.property(anyChartOfFile.map(printChartDocument).chain(breakDocument), (document) => {
        const outcome = readOrRefusal(() => readChartDocument(JSON.stringify(document)));
        const fits = fitsSchema(document);
        if (!(outcome instanceof Error)) expect(fits).toBe(true);
        else if (fits) expect(BEYOND_SCHEMA).toContain(outcome.code);
        if (!fits) refused++;
      }),
      { numRuns: 1000 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});

describe('a faulty chart document', () => {
  it.each([
    [heron({ format: 'something' }), 'format-unknown', { line: 2, column: 13, path: 'format' }],
    [heron({ format: 'halfhitch-plan' }), 'format-unknown', { path: 'format' }],
    [heron({ version: 2 }), 'version-newer', { line: 3, path: 'version' }],
    [heron({ version: 0 }), 'version-unknown', { line: 3, path: 'version' }],
    [heron({ version: '1' }), 'version-unknown', { line: 3, path: 'version' }],
    [heron({ version: undefined }), 'version-missing', { line: 1 }],
    [heron({ rows: undefined }), 'property-missing', { line: 1 }],
    [heron({ colors: [] }), 'property-unknown', { line: 20, column: 13 }],
    [heron({ rows: ['bbw', 'bxb'] }), 'unknown-key', { row: 2, column: 2, path: 'rows[1]' }],
    [heron({ rows: ['bbw', 'bb'] }), 'rows-uneven', { row: 2, column: 3, path: 'rows[1]' }],
    [heron({ knots: ['///'] }), 'marks-uneven', { row: 2, path: 'knots[1]' }],
    [heron({ rows: [] }), 'no-rows', { path: 'rows' }],
    [heron({ rows: [''] }), 'row-empty', { path: 'rows[0]' }],
    [heron({ rows: [7] }), 'json-syntax', { path: 'rows[0]' }],
    [heron({ colours: [{ key: 'b' }] }), 'property-missing', { path: 'colours[0]' }],
    [heron({ colours: [{ key: 'b', hex: 'red' }] }), 'bad-colour', { path: 'colours[0].hex' }],
    [heron({ colours: [{ key: 'bb', hex: '#000' }] }), 'bad-key', { path: 'colours[0]' }],
    [heron({ edge: 'round' }), 'json-value', { path: 'edge' }],
    ['{"format": "halfhitch-chart", "format": ""}', 'json-twice', { line: 1, column: 31 }],
    ['{"a": 1,\n  "b": }', 'json-syntax', { line: 2, column: 8, path: 'b' }],
    ['{"a": 1', 'json-syntax', { line: 1, column: 8 }],
    ['{"a": "x\ny"}', 'json-syntax', { line: 1, column: 9 }],
    ['[]', 'json-syntax', { line: 1, column: 1 }],
    [`${heron({})} x`, 'json-syntax', {}],
    [`{"a": ${'['.repeat(100_000)}`, 'json-nesting', { path: 'a' }],
    ['{"__proto__": {"x": 1}, "format": "halfhitch-chart", "version": 1}', 'property-unknown', {}],
    ['{"format": "constructor"}', 'format-unknown', {}],
  ])('is refused: %#', (text, code, place) => {
    const error = refusal(() => readChartDocument(text));
    expect(error).toMatchObject({ code, place });
    expect(error.message.length).toBeLessThan(600);
  });

  it('tells users of a newer document to update', () => {
    expect(refusal(() => readChartDocument(heron({ version: 2 }))).message).toContain('update');
  });
});
