import { type Chart, printTextChart } from '@halfhitch/core';
import { encode } from 'fast-png';

const COLOURS = [
  ['b', '#1f5f99', 'lake blue'],
  ['o', '#e2711d', 'buoy orange'],
  ['g', '#3c7d4a', 'reed green'],
  ['c', '#f2efe6', 'chalk'],
  ['s', '#3b4650', 'slate'],
  ['r', '#b3323c', 'boathouse red'],
] as const;

/** A wave band for a crew of Tarn Ellerby. */
export function waveBand(rows: number, columns: number, colours: number): Chart {
  const cells = new Uint8Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const from = Math.abs(column - (columns - 1) / 2) + row;
      cells[row * columns + column] = Math.floor(from / 3) % colours;
    }
  }
  return {
    name: 'Kittiwake',
    rows,
    columns,
    colours: COLOURS.slice(0, colours).map(([key, hex, name]) => ({ key, hex, name })),
    cells,
  };
}

export function pngOf(chart: Chart): Uint8Array {
  const data = new Uint8Array(chart.cells.length * 3);
  chart.cells.forEach((cell, i) => {
    const hex = (chart.colours[cell] as { hex: string }).hex;
    for (let c = 0; c < 3; c++) {
      data[3 * i + c] = Number.parseInt(hex.slice(1 + 2 * c, 3 + 2 * c), 16);
    }
  });
  return encode({ width: chart.columns, height: chart.rows, data, channels: 3, depth: 8 });
}

export function textOf(chart: Chart): string {
  return printTextChart(chart);
}
