import { ANY_COLOUR } from '../../diagonal/picture.js';
import { type Problem, placeOfCell } from '../problem.js';

/** A row and how many strings of a colour its knots need; the colour by its number in the palette. */
export interface RowNeed {
  readonly row: number;
  readonly colour: number;
  readonly knots: readonly number[];
}

export interface CountingConflict {
  /** As many as conflict by their number alone. */
  readonly knots: readonly number[];
  /** Rows they are in, with all their knots of that colour. */
  readonly rows: readonly RowNeed[];
}

/**
 * Rows that need more strings than there are. A row of m knots of a colour needs m strings of it,
 * as it ties every string at most once, and a colour has as many strings in one row as in another;
 * so the greatest needs of all colours together must not be more than the strings.
 */
export function countingConflict(problem: Problem): CountingConflict | null {
  const { picture, palette, most, start } = problem;
  const greatest = greatestNeeds(problem);
  for (const need of greatest) {
    const limit = most[need.colour] as number;
    if (need.knots.length <= limit) continue;
    return { knots: need.knots.slice(0, limit + 1), rows: [need] };
  }
  const fixed = palette.map((_, colour) => start.filter((one) => one === colour).length);
  const needed = palette.map((_, colour) => {
    const need = greatest.find((one) => one.colour === colour)?.knots.length ?? 0;
    return Math.max(need, fixed[colour] as number);
  });
  // One string too many is enough for a conflict; knots beyond that are left out.
  let spare = needed.reduce((sum, count) => sum + count, 0) - picture.strings - 1;
  if (spare < 0) return null;
  const rows: RowNeed[] = [];
  const knots: number[] = [];
  for (const need of greatest) {
    const over = need.knots.length - (fixed[need.colour] as number);
    if (over <= 0) continue;
    const out = Math.min(spare, over);
    spare -= out;
    if (out === over) continue;
    rows.push(need);
    knots.push(...need.knots.slice(out));
  }
  return { knots, rows };
}

/** For each colour, the first row with the most knots of it. */
function greatestNeeds({ picture, net, asked }: Problem): RowNeed[] {
  const rows = new Map<string, RowNeed & { knots: number[] }>();
  for (let knot = 0; knot < net.knots; knot++) {
    const colour = asked[knot] as number;
    if (colour === ANY_COLOUR) continue;
    const { row } = placeOfCell(picture, net.cells[knot] as number);
    const key = `${colour}/${row}`;
    const need = rows.get(key);
    if (need === undefined) rows.set(key, { row, colour, knots: [knot] });
    else need.knots.push(knot);
  }
  const greatest = new Map<number, RowNeed>();
  for (const need of rows.values()) {
    const before = greatest.get(need.colour);
    if (before === undefined || need.knots.length > before.knots.length) {
      greatest.set(need.colour, need);
    }
  }
  return [...greatest.values()].sort((a, b) => a.row - b.row);
}
