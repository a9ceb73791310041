import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AlphaRows, driftOf, goneOn, rowMarks } from '../../src/tie/row-marks.js';
import { anyWork, CHOICE, chartOf } from './works.js';

const drawn = chartOf(['bbbb', 'bobo', 'wwww']);

describe('marks of what is tied', () => {
  it('are the same whether taken at once or knot by knot, forwards and back', () => {
    fc.assert(
      fc.property(anyWork, fc.array(fc.nat(), { maxLength: 8 }), ({ chart, choice }, stops) => {
        let marks = rowMarks(new AlphaRows(chart, choice), 0);
        let done = 0;
        for (const stop of stops) {
          const to = stop % (chart.cells.length + 1);
          marks = goneOn(marks, new AlphaRows(chart, choice), done, to);
          done = to;
          expect(marks).toEqual(rowMarks(new AlphaRows(chart, choice), done));
        }
      }),
    );
  });

  it('tell of a cell exactly when it is changed where it is tied', () => {
    fc.assert(
      fc.property(anyWork, fc.nat(), fc.nat(), ({ chart, choice }, at, count) => {
        const { columns, cells } = chart;
        const done = count % (cells.length + 1);
        const cell = at % cells.length;
        const other = cells.slice();
        other[cell] = ((cells[cell] ?? 0) + 1) % 3;
        const row = Math.floor(cell / columns);
        const rightwards = (choice.start === 'left') === (row % 2 === 0);
        const order = rightwards ? cell % columns : columns - 1 - (cell % columns);
        const tied = { done, columns, marks: rowMarks(new AlphaRows(chart, choice), done) };
        expect(driftOf(tied, new AlphaRows({ ...chart, cells: other }, choice))).toEqual(
          row * columns + order < done ? { what: 'row', row } : { what: 'none' },
        );
      }),
    );
  });

  const tied = { done: 6, columns: 4, marks: rowMarks(new AlphaRows(drawn, CHOICE), 6) };

  it('do not mind other names, more rows, or another order of the legend', () => {
    const [blue, orange, chalk] = drawn.colours;
    if (!blue || !orange || !chalk) throw new Error('No colours.');
    const shuffled = {
      ...chartOf(['wwww', 'wbwb', 'oooo', 'bbbb']),
      colours: [chalk, orange, { ...blue, name: 'water' }],
    };
    // The letters stand for other places of the legend now: w is 2, drawn blue.
    expect(driftOf(tied, new AlphaRows(shuffled, CHOICE))).toEqual({ what: 'row', row: 1 });
    const same = { ...shuffled, cells: Uint8Array.from([...'2222212100002222'].map(Number)) };
    expect(driftOf(tied, new AlphaRows(same, CHOICE))).toEqual({ what: 'none' });
  });

  it('tell of another edge, another start, fewer rows and other columns', () => {
    expect(driftOf(tied, new AlphaRows(drawn, { ...CHOICE, edge: 'wrapped' }))).toEqual({
      what: 'row',
      row: 0,
    });
    expect(driftOf(tied, new AlphaRows(drawn, { ...CHOICE, start: 'right' }))).toEqual({
      what: 'row',
      row: 0,
    });
    expect(driftOf(tied, new AlphaRows(chartOf(['bbbb']), CHOICE))).toEqual({
      what: 'row',
      row: 1,
    });
    expect(driftOf(tied, new AlphaRows(chartOf(['bbb', 'bob']), CHOICE))).toEqual({
      what: 'columns',
      was: 4,
      now: 3,
    });
  });
});
