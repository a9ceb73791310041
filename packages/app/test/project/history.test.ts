import fc from 'fast-check';
import { expect, test } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { History } from '../../src/project/history.js';
import {
  type AlphaProject,
  type DiagonalProject,
  newProject,
  type Project,
} from '../../src/project/project.js';
import { anyDiagonalProject } from '../diagonal/projects.js';

const colours = ['#1f6fb2', '#d9642a', '#f4f1e8'].map((hex, i) => ({ hex, name: '', key: `${i}` }));
const drawing = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .chain(([rows, columns]) =>
    fc
      .uint8Array({ min: 0, max: 2, minLength: rows * columns, maxLength: rows * columns })
      .map((cells) => ({ name: 'Heron', rows, columns, colours, cells })),
  );

/** Either a cell drawn, or something else altogether. */
const change = fc.oneof(
  fc
    .tuple(fc.nat(), fc.integer({ min: 0, max: 2 }))
    .map(([at, colour]) => (project: AlphaProject) => {
      const cells = project.chart.cells.slice();
      cells[at % cells.length] = colour;
      return { ...project, chart: { ...project.chart, cells } };
    }),
  drawing.map((chart) => (project: AlphaProject) => ({ ...project, chart })),
  fc
    .constantFrom('straight' as const, 'wrapped' as const)
    .map((edge) => (project: AlphaProject) => ({
      ...project,
      choice: { ...project.choice, edge },
    })),
);

test('every state comes back by undoing, and again by doing again', () => {
  fc.assert(
    fc.property(drawing, fc.array(change, { maxLength: 20 }), (chart, changes) => {
      const states: AlphaProject[] = [newProject(chart, USUAL_SETTINGS, 0)];
      for (const make of changes) states.push(make(states.at(-1) as AlphaProject));
      expectBackAndForth(states);
    }),
  );
});

test('every state of a diagonal pattern does as well', () => {
  fc.assert(
    fc.property(
      anyDiagonalProject,
      fc.array(fc.tuple(fc.nat(), anyDiagonalProject), { maxLength: 12 }),
      (first, changes) => {
        const states: DiagonalProject[] = [first];
        for (const [at, other] of changes) {
          const before = states.at(-1) as DiagonalProject;
          const { pattern, wanted } = before;
          const next = [
            { ...before, pattern: { ...pattern, knots: with1(pattern.knots, at) } },
            wanted === null
              ? { ...before, wanted: { ...pattern, cells: pattern.knots } }
              : { ...before, wanted: { ...wanted, cells: with1(wanted.cells, at) } },
            { ...other, id: first.id },
          ][at % 3];
          states.push(next as DiagonalProject);
        }
        expectBackAndForth(states);
      },
    ),
  );
});

/** The bytes with one of them changed. */
function with1(bytes: Uint8Array, at: number): Uint8Array {
  const next = bytes.slice();
  next[at % next.length] = (next[at % next.length] as number) === 0 ? 1 : 0;
  return next;
}

function expectBackAndForth(states: readonly Project[]): void {
  const history = new History();
  for (const [i, to] of states.entries()) {
    if (i > 0) history.add(states[i - 1] as Project, to, `Step ${i}`);
  }
  let now = states.at(-1) as Project;
  for (let i = states.length - 1; i > 0; i--) {
    expect(history.undoing).toBe(`Step ${i}`);
    now = history.undo(now);
    expect(now).toEqual(states[i - 1]);
  }
  expect(history.undoing).toBeNull();
  expect(history.undo(now)).toBe(now);
  for (let i = 1; i < states.length; i++) {
    expect(history.redoing).toBe(`Step ${i}`);
    now = history.redo(now);
    expect(now).toEqual(states[i]);
  }
  expect(history.redoing).toBeNull();
}
