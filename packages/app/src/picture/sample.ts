import type { KnotKind } from '@halfhitch/core';

/** Size of a sample piece; its first and last rows are not shown, since loose ends lie on them. */
export const SAMPLE = { rows: 4, columns: 3 } as const;

/** Where a kind of knot is in a straight-edged sample begun on the left, rows and columns from 0. */
export const IN_SAMPLE: Readonly<
  Record<KnotKind, { readonly row: number; readonly column: number }>
> = {
  forward: { row: 2, column: 1 },
  backward: { row: 1, column: 1 },
  'forward-backward': { row: 2, column: 2 },
  'backward-forward': { row: 2, column: 0 },
};
