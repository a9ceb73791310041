import { ANY_COLOUR } from '../../diagonal/picture.js';
import type { TimeLimit } from '../clock.js';
import type { Encoding } from '../encode.js';
import { type Problem, placeOfCell } from '../problem.js';
import { search } from '../search.js';
import { countUp } from '../totalizer.js';

export interface FewestStrings {
  readonly colours: Uint8Array;
  /** No pattern of the picture has fewer strings of the colour. */
  readonly proven: boolean;
}

/**
 * Colours with as few strings of one colour as can be: halving between the fewest found and the
 * fewest there may be. The row with the most knots of the colour needs that many strings, which is
 * tried first, as it is often enough.
 */
export async function fewestStrings(
  problem: Problem,
  encoding: Encoding,
  found: Uint8Array,
  colour: number,
  time: TimeLimit,
): Promise<FewestStrings> {
  const { net } = problem;
  const strings = Array.from(net.start, (wire) => encoding.literal(wire, colour));
  const { solver } = encoding;
  const counts = countUp(solver, strings);
  let colours = found;
  let least = mostInRow(problem, colour);
  let most = countOf(colours);
  let next = least;
  while (least < most) {
    const limit = counts[next];
    const verdict = await search(solver, limit === undefined ? [] : [-limit], time);
    if (verdict === 'unknown') return { colours, proven: false };
    if (verdict === 'satisfiable') {
      colours = encoding.colours();
      most = countOf(colours);
    } else least = next + 1;
    next = (least + most) >> 1;
  }
  return { colours, proven: true };

  function countOf(of: Uint8Array): number {
    return net.start.filter((wire) => of[wire] === colour).length;
  }
}

function mostInRow({ picture, net, asked }: Problem, colour: number): number {
  const rows = new Map<number, number>();
  for (let knot = 0; knot < net.knots; knot++) {
    if (asked[knot] !== colour || colour === ANY_COLOUR) continue;
    const { row } = placeOfCell(picture, net.cells[knot] as number);
    rows.set(row, (rows.get(row) ?? 0) + 1);
  }
  return Math.max(0, ...rows.values());
}
