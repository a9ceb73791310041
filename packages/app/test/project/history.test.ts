import fc from 'fast-check';
import { expect, test } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { History } from '../../src/project/history.js';
import { newProject, type Project } from '../../src/project/project.js';

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
  fc.tuple(fc.nat(), fc.integer({ min: 0, max: 2 })).map(([at, colour]) => (project: Project) => {
    const cells = project.chart.cells.slice();
    cells[at % cells.length] = colour;
    return { ...project, chart: { ...project.chart, cells } };
  }),
  drawing.map((chart) => (project: Project) => ({ ...project, chart })),
  fc
    .constantFrom('straight' as const, 'wrapped' as const)
    .map((edge) => (project: Project) => ({ ...project, choice: { ...project.choice, edge } })),
);

test('every state comes back by undoing, and again by doing again', () => {
  fc.assert(
    fc.property(drawing, fc.array(change, { maxLength: 20 }), (chart, changes) => {
      const history = new History();
      const states = [newProject(chart, USUAL_SETTINGS, 0)];
      for (const [i, make] of changes.entries()) {
        const from = states.at(-1) as Project;
        const to = make(from);
        history.add(from, to, `Step ${i}`);
        states.push(to);
      }
      let now = states.at(-1) as Project;
      for (let i = changes.length - 1; i >= 0; i--) {
        expect(history.undoing).toBe(`Step ${i}`);
        now = history.undo(now);
        expect(now).toEqual(states[i]);
      }
      expect(history.undoing).toBeNull();
      expect(history.undo(now)).toBe(now);
      for (const [i] of changes.entries()) {
        expect(history.redoing).toBe(`Step ${i}`);
        now = history.redo(now);
        expect(now).toEqual(states[i + 1]);
      }
      expect(history.redoing).toBeNull();
    }),
  );
});
