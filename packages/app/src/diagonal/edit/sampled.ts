import { type Chart, knotsInRow, type Lattice } from '@halfhitch/core';
import { relegended } from '../../draw/edit/colours.js';
import { withColour } from '../../draw/edit/legend.js';
import type { DiagonalChange, DiagonalProject } from '../../project/project.js';
import { placesFilled } from './pattern.js';
import { indexOf, slotOf } from './places.js';

/**
 * The picture of a chart on the lattice of a project: each knot has the colour of the chart at its
 * middle. Colours that the project does not have are added.
 *
 * @throws InputError when there would be too many
 */
export function pictureOfChart({ pattern }: DiagonalProject, chart: Chart): DiagonalChange {
  const { name, strings, rows, first } = pattern;
  const lattice = { strings, rows, first };
  let { colours } = pattern;
  const used = new Set(chart.cells);
  const places = chart.colours.map((colour, at) => {
    if (!used.has(at)) return 0;
    const known = colours.findIndex(({ hex }) => hex === colour.hex);
    if (known >= 0) return known;
    colours = withColour(colours, colour.hex, colour.name).colours;
    return colours.length - 1;
  });
  const { cells } = relegended(chart, { colours: chart.colours, places });
  const wanted = { name, ...lattice, colours, cells: sampled(lattice, { ...chart, cells }) };
  return { pattern: { ...pattern, colours }, wanted };
}

function sampled(lattice: Lattice, { rows, columns, cells }: Chart): Uint8Array {
  const bytes = placesFilled(lattice, 0);
  for (let row = 0; row < lattice.rows; row++) {
    const from = Math.min(rows - 1, Math.floor(((row + 0.5) / lattice.rows) * rows));
    for (let column = 0; column < knotsInRow(lattice, row); column++) {
      const middle = (slotOf(lattice, { row, column }) + 1) / lattice.strings;
      const at = Math.min(columns - 1, Math.floor(middle * columns));
      bytes[indexOf(lattice, { row, column })] = cells[from * columns + at] as number;
    }
  }
  return bytes;
}
