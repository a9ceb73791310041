import type { ChartColour } from '../chart/chart.js';
import type { HalfWay, KnotKind } from '../model/knot.js';
import type { ThreadString } from '../model/strings.js';
import type { ChangePlace } from '../plan/changes.js';

/** The sentences of findings: what is so and what follows from it. */

const SINGLE_EDGE =
  'With one edge knot at the turn instead of two, the edge string is held once in two rows: the edge pulls in there and a loop of the lead shows.';

const PLACE_IN_WORDS: Readonly<Record<ChangePlace, string>> = {
  withinRow: 'within the row',
  afterFirstKnot: 'after the first knot',
  lastKnot: 'at the last knot',
  turn: 'at the turn',
};

export function rowTooMany(rows: number): string {
  return `The plan goes on after row ${rows}, the last of the drawing; what follows is not looked at.`;
}

export function baseTies(string: string): string {
  return `String ${string} is a base string and is to be tied onto, but the plan ties with it: the knot would show the base string's colour, and the lead would be left behind.`;
}

export function unlistedTies(): string {
  return 'The knot is to be tied by a string that the plan does not list, so nobody can know which it is.';
}

export function heldIsNoBase(held: string, base: string): string {
  return `The knot is tied onto ${held}, which is no base string; the next to be tied onto is ${base}. ${base} would get no knot and the cell would stay empty.`;
}

export function turnMissing(row: number): string {
  return `Row ${row + 1} is full, but the plan goes on without a turn: the lead has nowhere to go on to in this direction.`;
}

export function turnTooSoon(tied: number): string {
  return `The plan turns after ${tied} ${tied === 1 ? 'knot' : 'knots'} of this row and then goes on in the same direction: the turn is one too many, and every row after it would run the wrong way.`;
}

export function turnInKnot(base: string): string {
  return `The plan turns in the middle of the knot on ${base}, of which only one half is tied: the second half would count for the next row.`;
}

export function doubled(base: string, edge: boolean): string {
  return edge
    ? `Edge string ${base} has its knot in this row already; a second one makes the edge longer than the work beside it, so it bulges.`
    : `Base string ${base} has its knot in this row already, and the lead has gone past it; a second knot would put every later knot of the row one string out.`;
}

export function wrongHeld(held: string, wanted: string, tied: boolean): string {
  const follows = tied
    ? `${held} would have two knots in this row and ${wanted} none`
    : `${wanted} would be skipped, and the lead cannot reach ${held} without crossing it`;
  return `The knot is tied onto ${held}, but the next string in this row is ${wanted}: ${follows}.`;
}

export function tooLate(held: string): string {
  return `The knot is tied onto ${held}, which the lead has passed already in this row: it cannot get there without going back over the knots since.`;
}

export function skipped(base: string, lead: string, next: string, edge: boolean): string {
  const lies = `Base string ${base} is skipped: this knot is missing, and lead ${lead} would lie loose across ${base} on its way to ${next}.`;
  return edge
    ? `${lies} ${SINGLE_EDGE}`
    : `${lies} The bare string shows there, and the rows below have nothing to sit on.`;
}

export function missing(base: string, kind: KnotKind, edge: boolean): string {
  const lacks = `The ${kind} knot on base string ${base} is missing, so the cell shows no colour and the bare string.`;
  return edge ? `${lacks} ${SINGLE_EDGE}` : lacks;
}

export function wrongFirstHalf(way: HalfWay, kind: KnotKind, lead: string): string {
  const side = way === 'forward' ? 'left' : 'right';
  return `The knot begins with a ${way} half hitch, for which lead ${lead} would have to hang on the ${side} of the held string; it hangs on the other side, where a ${kind} knot begins, so the knot cannot be tied as written.`;
}

export function wrongKind(
  kind: KnotKind,
  wanted: KnotKind,
  base: string,
  displaced: boolean,
): string {
  const what = `A ${kind} knot is tied on ${base} where a ${wanted} knot belongs.`;
  if (displaced) {
    return `${what} The lead ends on the outside of edge string ${base}, which moves in by one place: the edge steps and the lead's colour shows beside it.`;
  }
  return `${what} The lead ends on the wrong side of ${base}.`;
}

export function oddKnotBlocks(
  before: string,
  lead: string,
  base: string,
  row: number,
  column: number,
): string {
  return `${before} From there lead ${lead} cannot tie the next knot, on ${base} in row ${row + 1}, column ${column + 1}, as planned.`;
}

export function outOfPlace(lead: string, base: string, why: string): string {
  return `Lead ${lead} is not where the knot on ${base} needs it. ${why}`;
}

export function notInHand(lead: string, base: string): string {
  return `The knot on ${base} is to be tied by ${lead}, which is not in front: without taking it up first, it cannot tie, and the lead in hand would show its own colour instead.`;
}

export function secondHalfBy(lead: string, first: string): string {
  return `The first half of this knot is tied by ${first}, but the second by ${lead}: one string ties both halves, or the knot is not locked.`;
}

export function secondHalfOn(held: string, first: string): string {
  return `The first half of this knot is tied onto ${first}, but the second onto ${held}: both halves go onto the same string, or neither holds.`;
}

export function halfKnot(lead: string, base: string, kind: KnotKind): string {
  return `Only one half hitch of the ${kind} knot is tied on ${base}: half a knot slips, and lead ${lead} is not where the next knot needs it.`;
}

export function colourDiffers(
  string: ThreadString | undefined,
  drawn: ChartColour | undefined,
): string {
  return `The knot shows ${colour(string?.name, string?.colour)}, the colour of ${string?.id ?? 'its lead'}, but ${colour(drawn?.name, drawn?.hex)} is drawn.`;
}

function colour(name: string | undefined, hex: string | undefined): string {
  if (name === undefined || name === '') return hex ?? 'another colour';
  return `${name} (${hex})`;
}

export function baseLeaves(string: string): string {
  return `Base string ${string} is taken from the front, but base strings stay in front: every knot of its column would be missing from here on.`;
}

export function notCaught(lead: string, why: string): string {
  return `The old lead ${lead} is to go to the back through the middle of this knot, but it was not laid through it before the second half. ${why} Left like this, nothing holds it.`;
}

export function cannotBeDone(why: string): string {
  return `A step of the plan cannot be done here. ${why}`;
}

export function stray(lead: string): string {
  return `Lead ${lead} hangs in front though another lead ties: it would be in the way of this and every later knot. Take it to the back.`;
}

export function oldLeadStays(lead: string, place: ChangePlace): string {
  return `The old lead ${lead} still hangs in front after the colour change ${PLACE_IN_WORDS[place]}. It would be in the way of every row to come; take it to the back.`;
}

export function oldLeadNotLaid(lead: string, place: ChangePlace): string {
  return `The old lead ${lead} is not laid through the knot at the colour change ${PLACE_IN_WORDS[place]}, so nothing holds it: its last knot can work loose and a loop shows at the back.`;
}

export function oldLeadCaught(lead: string, place: ChangePlace): string {
  const instead = place === 'turn' ? 'down and behind' : 'behind and under that knot';
  return `The old lead ${lead} is caught in the knot at the colour change ${PLACE_IN_WORDS[place]}, so it sticks out at the side. Pass it ${instead} instead.`;
}

export function oldLeadBesideEdge(lead: string): string {
  return `The old lead ${lead} goes straight down at the last knot; pass it behind and under that knot, or it shows beside the edge.`;
}

export function oldLeadBehindAtTurn(lead: string): string {
  return `The old lead ${lead} is passed behind a knot at the turn; take it down and behind, or the last knot of the row above does not lie level.`;
}

/** @param down,across how far the float runs, in knots, and `most` how long it may be */
export function longFloat(lead: string, down: number, across: number, most: number): string {
  const rows = `${down} ${down === 1 ? 'row' : 'rows'}`;
  const knots = `${across} ${across === 1 ? 'knot' : 'knots'}`;
  return `Lead ${lead} comes back over a float of ${rows} and ${knots} behind the work, more than ${most} knots long: it can snag, and pulled tight it puckers the work.`;
}

export function singleEdge(base: string): string {
  return `Edge string ${base} has only one of the two edge knots of this turn. ${SINGLE_EDGE}`;
}

const REPEAT_OPEN = 'Tied again below itself, the pattern does not simply go on';

export function sidesDiffer(): string {
  return `${REPEAT_OPEN}: the sides differ, because after an odd number of rows the lead is on the other side.`;
}

export function coloursDiffer(): string {
  return `${REPEAT_OPEN}: the colours differ, because the last knot and the first have different leads.`;
}
