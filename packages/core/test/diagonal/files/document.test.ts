import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakDocument } from '../../../../../testing/break-document.js';
import {
  printDiagonalDocument,
  printDiagonalPictureDocument,
  readDiagonalDocument,
  readDiagonalPictureDocument,
  readDiagonalText,
} from '../../../src/index.js';
import { anyDiagonalOfFile, anyPictureOfFile } from '../../support/any-diagonal-file.js';
import { readOrRefusal, refusal } from '../../support/refusal.js';

const schemaOf = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../../schema/${name}.schema.json`, import.meta.url), 'utf8'));
const fitsPattern = new Ajv2020({ strict: true }).compile(schemaOf('diagonal-1'));
const fitsPicture = new Ajv2020({ strict: true }).compile(schemaOf('diagonal-picture-1'));

/** What the schemas cannot say, and the readers check. */
const BEYOND_SCHEMA = new Set([
  'key-twice',
  'key-taken',
  'colour-twice',
  'unknown-key',
  'unknown-mark',
  'row-uneven',
  'too-few-strings',
  'too-many-strings',
]);

const OARS = {
  format: 'halfhitch-diagonal',
  version: 1,
  name: 'Oars',
  colours: [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'o', hex: '#e8742c' },
  ],
  start: 'bboo',
  rows: ['\\/', '>'],
};
const oars = (change: object) => JSON.stringify({ ...OARS, ...change }, null, 2);

describe('the document of a diagonal pattern', () => {
  it('says the same as its text', () => {
    expect(readDiagonalDocument(oars({ first: 2, rows: ['\\', ' / . '] }))).toEqual(
      readDiagonalText(
        'pattern diagonal\nname Oars\nfirst 2\nb #1f6fb2 lake blue\no #e8742c\n\nbboo\n\n \\\n/ .',
      ),
    );
  });

  it('is the same after printing and reading, and fits its schema', () => {
    fc.assert(
      fc.property(anyDiagonalOfFile, (pattern) => {
        const printed = printDiagonalDocument(pattern);
        expect(readDiagonalDocument(printed)).toEqual(pattern);
        expect(fitsPattern(JSON.parse(printed))).toBe(true);
      }),
    );
  });

  it('is taken by the reader just when it fits the schema, but for what a schema cannot say', () => {
    let refused = 0;
    fc.assert(
      fc.property(anyDiagonalOfFile.map(printDiagonalDocument).chain(breakDocument), (document) => {
        const outcome = readOrRefusal(() => readDiagonalDocument(JSON.stringify(document)));
        const fits = fitsPattern(document);
        if (!(outcome instanceof Error)) expect(fits).toBe(true);
        else if (fits) expect(BEYOND_SCHEMA).toContain(outcome.code);
        if (!fits) refused++;
      }),
      { numRuns: 500 },
    );
    expect(refused).toBeGreaterThan(50);
  });

  it.each([
    [oars({ format: 'halfhitch-chart' }), 'format-unknown', { path: 'format' }],
    [oars({ version: 2 }), 'version-newer', { path: 'version' }],
    [oars({ start: undefined }), 'property-missing', { line: 1 }],
    [oars({ edge: 'straight' }), 'property-unknown', {}],
    [oars({ first: 3 }), 'json-value', { path: 'first' }],
    [oars({ start: 'b' }), 'too-few-strings', { path: 'start' }],
    [oars({ start: 'bbxo' }), 'unknown-key', { path: 'start', column: 3 }],
    [oars({ rows: ['\\/', '>>'] }), 'row-uneven', { row: 2, column: 2, path: 'rows[1]' }],
    [oars({ rows: ['\\b', '>'] }), 'unknown-mark', { row: 1, column: 2, path: 'rows[0]' }],
    [oars({ rows: [] }), 'no-rows', { path: 'rows' }],
    [oars({ rows: ['\\'.repeat(601)] }), 'row-too-long', { path: 'rows[0]' }],
  ])('is refused where it is faulty: %#', (text, code, place) => {
    expect(refusal(() => readDiagonalDocument(text))).toMatchObject({ code, place });
  });
});

describe('the document of a wanted picture', () => {
  it('is the same after printing and reading, and fits its schema', () => {
    fc.assert(
      fc.property(anyPictureOfFile, (picture) => {
        const printed = printDiagonalPictureDocument(picture);
        const { colours, ...read } = readDiagonalPictureDocument(printed);
        expect(read).toEqual({ ...picture, colours: undefined, ...read, cells: picture.cells });
        expect(colours.map(({ hex }) => hex)).toEqual(picture.colours.map(({ hex }) => hex));
        expect(fitsPicture(JSON.parse(printed))).toBe(true);
      }),
    );
  });

  it('is taken by the reader just when it fits the schema, but for what a schema cannot say', () => {
    fc.assert(
      fc.property(
        anyPictureOfFile.map(printDiagonalPictureDocument).chain(breakDocument),
        (document) => {
          const outcome = readOrRefusal(() =>
            readDiagonalPictureDocument(JSON.stringify(document)),
          );
          const fits = fitsPicture(document);
          if (!(outcome instanceof Error)) expect(fits).toBe(true);
          else if (fits) expect(BEYOND_SCHEMA).toContain(outcome.code);
        },
      ),
      { numRuns: 300 },
    );
  });
});
