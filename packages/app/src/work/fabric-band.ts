import { drawFabric, fabricGeometry, type Plan, type Verification } from '@halfhitch/core';

/**
 * A strip of the fabric's picture: the rows from `from` to before `end`, cut so that strips set
 * below each other make the whole picture. One row more on each side is drawn and cut away, since
 * the lead turns from row to row.
 */
export function drawBand(
  plan: Plan,
  verification: Verification,
  from: number,
  end: number,
): string {
  const { rows, columns } = verification;
  const first = Math.max(0, from - 1);
  const last = Math.min(rows, end + 1);
  const part: Verification = {
    ...verification,
    rows: last - first,
    knots: (last - first) * columns,
    tying: verification.tying.subarray(first * columns, last * columns),
    kinds: verification.kinds.subarray(first * columns, last * columns),
  };
  const turned = first % 2 === 1;
  const picture = drawFabric({
    plan: {
      ...plan,
      rows: last - first,
      start: turned === (plan.start === 'left') ? 'right' : 'left',
    },
    verification: part,
  });
  const { y, height } = bandBox(rows, columns, from, end);
  const whole = fabricGeometry(rows, columns);
  const drawnFrom = y - first * whole.cellHeight;
  const { width } = whole;
  return picture.replace(
    /viewBox="[^"]*" width="[^"]*" height="[^"]*"/,
    `viewBox="0 ${drawnFrom} ${width} ${height}" width="${width}" height="${height}"`,
  );
}

/** Where a strip lies in the whole picture, in its units; the outer ones hold the loose ends. */
export function bandBox(
  rows: number,
  columns: number,
  from: number,
  end: number,
): { readonly y: number; readonly height: number } {
  const { top, height, cellHeight } = fabricGeometry(rows, columns);
  const y = from === 0 ? 0 : top + from * cellHeight;
  const below = end >= rows ? height : top + end * cellHeight;
  return { y, height: below - y };
}
