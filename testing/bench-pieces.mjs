/** Colours of what is measured. */
export const SIX_COLOURS = Array.from({ length: 6 }, (_, i) => ({
  key: 'abcdef'[i],
  hex: `#${(0x202020 + i * 0x1f1f1f).toString(16)}`,
  name: '',
}));

/** Colour of a knot by its row and column, so that it changes seldom, often and nearly always. */
export const bandsOf7Rows = (row) => Math.floor(row / 7) % 6;
export const blocksOf9Knots = (_row, column) => Math.floor(column / 9) % 6;
export const changesNearlyAlways = (row, column) =>
  (row * 31 + column * 17 + ((row * column) % 5)) % 6;

/** A chart of six colours, coloured by row and column. */
export function chartOf(rows, columns, colourOf) {
  const cells = new Uint8Array(rows * columns);
  for (let cell = 0; cell < cells.length; cell++) {
    cells[cell] = colourOf(Math.floor(cell / columns), cell % columns);
  }
  return { name: '', rows, columns, colours: SIX_COLOURS, cells };
}
