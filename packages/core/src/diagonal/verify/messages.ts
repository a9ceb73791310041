import type { HalfWay, KnotKind } from '../../model/knot.js';
import type { ThreadString } from '../../model/strings.js';

/** The sentences of findings: what is so and what follows from it. */

const sideFor = (way: HalfWay): string => (way === 'forward' ? 'left' : 'right');

export function rowTooMany(rows: number): string {
  return `The plan goes on after row ${rows}, the last that is wanted; what follows is not looked at.`;
}

export function stringLeaves(what: string): string {
  return `The step "${what}" belongs to leads. In a diagonal pattern every string stays in front from the first row to the last, so it is passed over.`;
}

export function turnMissing(row: number, tying: string, held: string): string {
  return `${tying} is tied onto ${held}, which is a knot of row ${row + 2}, but there was no turn after row ${row + 1}: without it nobody can tell where one row ends and the next begins.`;
}

export function turnTooSoon(tying: string, held: string): string {
  return `The plan turns, and then ties this knot of the same row, ${tying} onto ${held}: the turn is one too many, and every row after it would be counted wrongly.`;
}

export function turnInKnot(tying: string, held: string): string {
  return `The plan turns in the middle of a knot, of which ${tying} has tied only one half onto ${held}: the second half would count for the next row.`;
}

export function doubled(left: string, right: string): string {
  return `Strings ${left} and ${right} have their knot in this row already. A second one makes the work longer here than beside it, and if it exchanges them, both go on the wrong way.`;
}

export function notAPair(tying: string, held: string, left: string, right: string): string {
  return `${tying} is to be tied onto ${held}, but these are no pair of this row: in this place hang ${left} and ${right}. As it is written the knot cannot be tied, and the place would stay bare.`;
}

export function noPair(tying: string, held: string): string {
  return `${tying} is to be tied onto ${held}, but no place of this row that is still free has either of them: the knot is passed over.`;
}

export function missing(left: string, right: string, kind: KnotKind | null): string {
  const what = kind === null ? 'The knot' : `The ${kind} knot`;
  return `${what} between ${left} and ${right} is missing: the place stays bare, and the two strings go on as they hang.`;
}

export function wrongFirstHalf(way: HalfWay, tying: string, held: string): string {
  return `The knot begins with a ${way} half hitch, for which ${tying} would have to hang on the ${sideFor(way)} of ${held}; it hangs on the other side, so the knot cannot be tied as written.`;
}

export function wrongKind(
  kind: KnotKind,
  wanted: KnotKind,
  exchanges: boolean,
  wantedExchanges: boolean,
): string {
  const what = `A ${kind} knot is tied where the pattern has a ${wanted} one.`;
  if (exchanges === wantedExchanges) return `${what} The other string of the two is seen.`;
  return exchanges
    ? `${what} It exchanges the two strings, which should stay on their sides: each goes on in the other's place.`
    : `${what} It leaves the two strings on their sides, which should be exchanged: each goes on in the other's place.`;
}

export function wrongSides(
  kind: KnotKind,
  string: string,
  partner: string,
  other: string,
  row: number,
  exchanges: boolean,
): string {
  const does = exchanges ? 'exchanges' : 'does not exchange';
  const should = exchanges ? 'one that leaves them on their sides' : 'one that exchanges them';
  return `This ${kind} knot ${does} ${string} and ${partner}, but in row ${row + 1} ${string} is to be knotted with ${other}, on whose side it does not hang then: ${should} belongs here.`;
}

export function secondHalfBy(tying: string, first: string): string {
  return `The first half of this knot is tied by ${first}, but the second by ${tying}: one string ties both halves, or the knot does not hold.`;
}

export function secondHalfOn(held: string, first: string): string {
  return `The first half of this knot is tied onto ${first}, but the second onto ${held}: both halves go onto the same string, or neither holds.`;
}

export function halfKnot(tying: string, held: string): string {
  return `Only one half hitch of the knot is tied by ${tying} onto ${held}: half a knot slips, and does not settle on which side the strings go on.`;
}

export function notWanted(tying: string, held: string): string {
  return `${tying} is tied onto ${held} where no knot is wanted: the two strings are to hang past each other here.`;
}

export function colourDiffers(
  string: ThreadString | undefined,
  wanted: { readonly name: string; readonly hex: string } | undefined,
): string {
  return `The knot shows ${colour(string?.name, string?.colour)}, the colour of ${string?.id ?? 'its string'}, but ${colour(wanted?.name, wanted?.hex)} is wanted.`;
}

export function wrongStart(
  string: ThreadString,
  wanted: { readonly name: string; readonly hex: string } | undefined,
): string {
  return `${string.id} is ${colour(string.name, string.colour)}, but the pattern hangs ${colour(wanted?.name, wanted?.hex)} in its place: every knot it ties shows the other colour.`;
}

export function loose(string: string, rows: number): string {
  return `String ${string} was in no knot for ${rows} rows before this one: that stretch hangs loose, and can catch.`;
}

export function repeatOpen(sentences: readonly string[]): string {
  return `Tied again below itself, the pattern does not simply go on. ${sentences.join(' ')}`;
}

function colour(name: string | undefined, hex: string | undefined): string {
  if (name === undefined || name === '') return hex ?? 'another colour';
  return `${name} (${hex})`;
}
