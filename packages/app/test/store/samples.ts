import { type Chart, EDGE_TECHNIQUES, START_SIDES } from '@halfhitch/core';
import fc from 'fast-check';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import type { AlphaProject, Project } from '../../src/project/project.js';
import type { Progress } from '../../src/store/progress.js';
import { anyDiagonalProject } from '../diagonal/projects.js';

export const chart: Chart = {
  name: 'Heron',
  rows: 3,
  columns: 4,
  colours: [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'o', hex: '#d9642a', name: 'buoy orange' },
  ],
  cells: Uint8Array.from([0, 0, 1, 0, 0, 1, 1, 0, 1, 1, 1, 1]),
};

export function project(change: Partial<AlphaProject> = {}): AlphaProject {
  return {
    kind: 'alpha',
    id: 'a1',
    chart,
    choice: { edge: 'straight', start: 'left' },
    cut: USUAL_SETTINGS,
    created: 1_000,
    changed: 2_000,
    ...change,
  };
}

export function progress(change: Partial<Progress> = {}): Progress {
  return {
    id: 'a1',
    done: 5,
    columns: 4,
    marks: Uint32Array.from([7, 8, 9]),
    times: [
      { seconds: 4, knots: 1, changes: 0 },
      { seconds: 21.5, knots: 3, changes: 1 },
    ],
    active: 60,
    changed: 3_000,
    revision: 0,
    ...change,
  };
}

/** Charts and choices of every kind, small. */
const anyAlphaProject: fc.Arbitrary<AlphaProject> = fc
  .record({
    rows: fc.integer({ min: 1, max: 6 }),
    columns: fc.integer({ min: 1, max: 6 }),
    colours: fc.uniqueArray(fc.constantFrom(...'abcdefgh#ß𝄞'), { minLength: 1, maxLength: 6 }),
    byHand: fc.boolean(),
  })
  .chain(({ rows, columns, colours, byHand }) => {
    const bytes = (max: number) =>
      fc
        .array(fc.integer({ min: 0, max }), {
          minLength: rows * columns,
          maxLength: rows * columns,
        })
        .map((list) => Uint8Array.from(list));
    return fc.record({
      kind: fc.constant('alpha'),
      id: fc.uuid(),
      chart: fc.record(
        {
          name: fc.string({ maxLength: 200 }),
          rows: fc.constant(rows),
          columns: fc.constant(columns),
          colours: fc.tuple(
            ...colours.map((key) =>
              fc.record({
                key: fc.constant(key),
                hex: fc
                  .integer({ min: 0, max: 0xffffff })
                  .map((n) => `#${n.toString(16).padStart(6, '0')}`),
                name: fc.string({ maxLength: 200 }),
              }),
            ),
          ),
          cells: bytes(colours.length - 1),
          edge: fc.constantFrom(...EDGE_TECHNIQUES),
          ...(byHand ? { knots: bytes(3) } : {}),
        },
        { requiredKeys: ['name', 'rows', 'columns', 'colours', 'cells'] },
      ),
      choice: fc.record({
        edge: fc.constantFrom(...EDGE_TECHNIQUES),
        start: fc.constantFrom(...START_SIDES),
      }),
      cut: fc.constant(USUAL_SETTINGS),
      created: fc.nat(),
      changed: fc.nat(),
    }) as fc.Arbitrary<AlphaProject>;
  });

export const anyProject: fc.Arbitrary<Project> = fc.oneof(anyAlphaProject, anyDiagonalProject);

/** Anything that a broken disk, another page or a later version may have left. */
export const anything: fc.Arbitrary<unknown> = fc.anything({
  withBigInt: true,
  withDate: true,
  withMap: true,
  withTypedArray: true,
  maxDepth: 2,
});
