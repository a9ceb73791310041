import type { ChartColour } from '../chart/chart.js';
import { GIVEN_KEYS } from '../chart/legend.js';
import { DIAGONAL_LIMITS, knotIndex, knotsAcross } from '../diagonal/lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import type { DiagonalPlan } from '../diagonal/plan.js';
import { DiagonalPlanReader } from '../diagonal/reading.js';
import { InputError } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import { stringIndex } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';

/**
 * The pattern that the steps of a plan knot.
 *
 * @throws InputError when a step cannot be done, a knot is in no place of the lattice, or there are
 * too many colours
 */
export function patternOfDiagonalPlan(plan: DiagonalPlan): DiagonalPattern {
  const { name, lattice, strings, hung } = plan;
  const index = stringIndex(strings);
  const hanging = hung.map((id) => strings[index.get(id) ?? -1] as ThreadString);
  const colours: ChartColour[] = [];
  const start = Uint8Array.from(hanging, ({ colour: hex, name: called }) => {
    const known = colours.findIndex((colour) => colour.hex === hex && colour.name === called);
    if (known >= 0) return known;
    colours.push({ key: GIVEN_KEYS[colours.length] ?? '', hex, name: called });
    return colours.length - 1;
  });
  if (colours.length > DIAGONAL_LIMITS.maxColours) {
    throw new InputError(
      'too-many-colours',
      `The strings of the plan have ${colours.length} colours.`,
      {},
      `A pattern has at most ${DIAGONAL_LIMITS.maxColours}.`,
    );
  }
  const knots = new Uint8Array(lattice.rows * knotsAcross(lattice)).fill(NO_KNOT);
  for (const row of new DiagonalPlanReader(plan)) {
    for (const knot of row.knots) {
      knots[knotIndex(lattice, knot.row, knot.place)] = KNOT_KINDS.indexOf(knot.kind);
    }
  }
  return { name, ...lattice, colours, start, knots };
}
