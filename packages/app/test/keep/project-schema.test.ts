import { InputError } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakDocument } from '../../../../testing/break-document.js';
import { printProjectDocument, readProjectDocument } from '../../src/keep/project-document.js';
import type { Project } from '../../src/project/project.js';
import { anyDiagonalProject } from '../diagonal/projects.js';
import { aChart, projectOf } from './charts.js';
import { fitsProjectSchema as fitsSchema } from './project-schemas.js';

const anyAlphaProject: fc.Arbitrary<Project> = aChart().map(projectOf);

const PROGRESS = { done: 3, columns: 12, seconds: 61, marks: Uint32Array.of(7, 0xffffffff) };

const anyPrinted = fc
  .tuple(fc.oneof(anyAlphaProject, anyDiagonalProject), fc.constantFrom(null, PROGRESS))
  .map(([project, progress]) => printProjectDocument(project, progress));

/** What the schemas cannot say, and the reader checks. */
const BEYOND_SCHEMA = new Set([
  'colour-twice',
  'key-taken',
  'key-twice',
  'marks-uneven',
  'row-uneven',
  'rows-uneven',
  'time',
  'too-few-strings',
  'too-many-strings',
  'unknown-key',
  'unknown-mark',
  'wanted-differs',
]);

describe('the schema of projects', () => {
  test('fits what is exported', () => {
    fc.assert(
      fc.property(anyPrinted, (printed) => fitsSchema(JSON.parse(printed))),
      { numRuns: 60 },
    );
  });

  test('fits just what is read, but for what a schema cannot say', () => {
    let refused = 0;
    // What stands in the fields of the cut list is forgiven, as far as it can be.
    const withoutCut = anyPrinted.map((text) => {
      const { cut: _cut, ...rest } = JSON.parse(text) as Record<string, unknown>;
      return JSON.stringify(rest);
    });
    fc.assert(
      fc.property(withoutCut.chain(breakDocument), (document) => {
        const fits = fitsSchema(document);
        try {
          readProjectDocument(JSON.stringify(document));
          expect(fits).toBe(true);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          if (fits) expect(BEYOND_SCHEMA).toContain(error.code);
        }
        if (!fits) refused++;
      }),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(40);
  });

  test.each([
    { format: 'halfhitch-chart' },
    { version: 3 },
    { id: '../8c0d0c6e' },
    { created: 'yesterday' },
    { created: '1969-12-31T23:59:59Z' },
    { chart: undefined },
    { cut: { thread: 'silk' } },
    { cut: { tex: 240 } },
    { cut: { margin: '1234567890123' } },
    { progress: { done: 3 } },
    { progress: { done: -1, columns: 12 } },
    { progress: { done: 1, columns: 12, marks: [4294967296] } },
    { colour: 'blue' },
  ])('does not fit %j', (change) => {
    const [sound] = fc.sample(anyAlphaProject, 1);
    const document = JSON.parse(printProjectDocument(sound as Project)) as object;
    expect(fitsSchema(document)).toBe(true);
    expect(fitsSchema(JSON.parse(JSON.stringify({ ...document, ...change })))).toBe(false);
  });
});
