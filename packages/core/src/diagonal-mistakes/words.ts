import type { DiagonalPattern } from '../diagonal/pattern.js';
import { NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { hangingStrings } from '../diagonal/plan.js';
import { kindInFull, slotRangeInWords, slotsInWords } from '../diagonal-words/wording.js';
import { colourInWords, count, leadInWords, list } from '../instructions/wording.js';
import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import type { ThreadString } from '../model/strings.js';
import type { DiagonalConsequences, DiagonalWayBack } from './consequences.js';
import { type DiagonalMistake, isOfStart, isPlaced } from './mistake.js';
import { HALF, NO_SLOT, type Piece, pieceOf } from './piece.js';
import { DiagonalLook } from './seen.js';
import type { DiagonalQuestion } from './tell-apart.js';
import type { DiagonalUndo } from './undo.js';

/** Rows of knots to undo that are told one by one. */
const ROWS_TOLD = 8;

/** Mistakes of diagonal work, and how they are put right, in whole sentences. */
export class DiagonalMistakeWords {
  private readonly strings: readonly ThreadString[];

  constructor(private readonly pattern: DiagonalPattern) {
    this.strings = hangingStrings(pattern);
  }

  /**
   * What was done.
   *
   * @param all every mistake of the piece, as rows too many and too few move the others
   */
  what(mistake: DiagonalMistake, all: readonly DiagonalMistake[] = [mistake]): string {
    switch (mistake.kind) {
      case 'wrong-kind':
        return `A ${mistake.tied} knot is tied in ${this.at(mistake, all)}, where a ${this.kind(mistake, all)} knot belongs.`;
      case 'missing-knot':
        return `The knot in ${this.at(mistake, all)} is left out.`;
      case 'extra-knot':
        return `A ${mistake.tied} knot is tied in ${this.at(mistake, all)}, where none belongs.`;
      case 'half-knot':
        return `Only the first half hitch of the ${this.kind(mistake, all)} knot in ${this.at(mistake, all)} is tied.`;
      case 'one-slot-off': {
        const slot = this.slot(mistake.row, mistake.place, all);
        const moved = slot + (mistake.towards === 'right' ? 1 : -1);
        return mistake.span === 'knot'
          ? `In row ${mistake.row + 1} the knot for ${slotsInWords(slot)} is tied at ${slotsInWords(moved)}, one slot to the ${mistake.towards}.`
          : `In row ${mistake.row + 1}, from the knot for ${slotsInWords(slot)} on, neighbours are picked up one slot to the ${mistake.towards}: the first at ${slotsInWords(moved)}.`;
      }
      case 'swapped-strings':
        return `At the start ${this.string(mistake.slot)} and ${this.string(mistake.other)} hang in each other's place: the one in slot ${mistake.other + 1}, the other in slot ${mistake.slot + 1}.`;
      case 'wrong-colour':
        return `In slot ${mistake.slot + 1} a string in ${this.colour(mistake.colour)} hangs at the start, where one in ${this.colour(this.pattern.start[mistake.slot] ?? 0)} belongs.`;
      case 'missing-row':
        return `A row is left out above row ${mistake.row + 1}: what should be row ${mistake.row + 1} is not there.`;
      case 'extra-row':
        return `Row ${mistake.row + 1} is the row above it once more.`;
    }
  }

  /** What has to be undone, and how, a sentence each. */
  undo({ row, place, knots }: DiagonalUndo, mistakes: readonly DiagonalMistake[]): string[] {
    const back = place === null ? `row ${row + 1}` : this.at({ row, place }, mistakes);
    if (knots.length === 0) return [`Nothing has to be undone: go back to ${back}.`];
    return [
      `Undo ${count(knots.length, 'knot')}, those tied last first, back to ${back}: ${this.knotsByRow(knots, mistakes)}.`,
      'The other knots can stay. Of each knot undo the second half hitch first: slacken the string that is tied onto, ease the loop open with a blunt needle, and draw the string that ties back through it; then the first half in the same way.',
    ];
  }

  /** How to go on when it has been undone. */
  goOn(mistakes: readonly DiagonalMistake[]): string {
    const [mistake] = mistakes;
    if (mistake === undefined || mistakes.length > 1) {
      return 'Then go on from there as the pattern has it.';
    }
    if (isOfStart(mistake)) {
      return mistake.kind === 'swapped-strings'
        ? 'Hang the two strings in each other’s slots, and tie the knots again as the pattern has them.'
        : `Hang a string in ${this.colour(this.pattern.start[mistake.slot] ?? 0)} there, and tie the knots again as the pattern has them.`;
    }
    if (!isPlaced(mistake)) {
      const due = pieceOf(this.pattern, []).rows[mistake.row];
      return due === undefined
        ? 'The piece is done then.'
        : `Then tie row ${due.source + 1} of the pattern, and go on from there.`;
    }
    if (mistake.kind === 'extra-knot')
      return 'Let the two strings hang there without a knot, and go on as the pattern has it.';
    const kind = this.kind(mistake, mistakes);
    return `Then tie a ${kind} knot in ${this.at(mistake, mistakes)}: ${kindInFull(kind)}. Go on from there as the pattern has it.`;
  }

  /** What the mistakes do to the piece from there on. */
  effect(consequences: DiagonalConsequences): string {
    const { differing, orderBack, coloursBack } = consequences;
    const [first] = differing;
    const shows =
      first === undefined
        ? 'All knots show their colours all the same'
        : `It makes ${count(differing.length, 'knot')} show another colour, ${
            differing.length === 1
              ? `in row ${first.row + 1}`
              : `from row ${first.row + 1} to row ${(differing.at(-1)?.row ?? 0) + 1}`
          }`;
    const order =
      orderBack === 0
        ? 'every string hangs where it belongs'
        : orderBack !== null
          ? `after row ${orderBack} every string hangs where it belongs again`
          : coloursBack !== null
            ? 'strings go on in the place of others of their colour, which does not show'
            : 'strings go on in the place of others to the end';
    return `${shows}; ${order}.`;
  }

  /** A way to go on other than undoing. */
  way(way: DiagonalWayBack, mistakes: readonly DiagonalMistake[]): string {
    const others = (differing: number): string =>
      differing === 0
        ? 'no knot shows another colour'
        : `${count(differing, 'knot')} ${differing === 1 ? 'shows' : 'show'} another colour`;
    switch (way.way) {
      case 'undo':
        return this.undo(way.undo, mistakes).join(' ');
      case 'mend':
        return `Without undoing: in ${this.at(way, mistakes)} tie a ${way.tied} knot in place of the ${way.written} one. From there on all is as it belongs; ${others(way.differing)}.`;
      case 'exchange': {
        const [one, two] = way.slots;
        const how =
          two - one === 1
            ? 'across each other, the one behind the other'
            : 'across, behind the strings between them';
        return `Without undoing: before row ${way.row + 1} lay the strings in slots ${one + 1} and ${two + 1} ${how}, so that each hangs in the other's slot. From there on all is as it belongs; ${others(way.differing)}.`;
      }
      case 'leave':
        return `Left as it is and tied on as the pattern has it, ${others(way.differing)} in the end.`;
    }
  }

  /** Where to look to tell alternatives apart. */
  question(question: DiagonalQuestion, mistakes: readonly DiagonalMistake[] = []): string {
    const where =
      question.of === 'hanging'
        ? `at the string that hangs in slot ${question.slot + 1} below the work`
        : `at the knot in ${this.at(question, mistakes)}`;
    const answers = question.answers.map(
      ({ seen, alternatives }) =>
        `${question.of === 'look' ? lookInWords(seen) : this.colour(seen)} speaks for ${alternatives.length === 1 ? 'number' : 'numbers'} ${numbers(alternatives)}`,
    );
    return `To tell them apart, look ${where}: ${list(answers)}.`;
  }

  private at(
    { row, place }: { readonly row: number; readonly place: number },
    all: readonly DiagonalMistake[],
  ): string {
    return `row ${row + 1} at ${slotsInWords(this.slot(row, place, all))}`;
  }

  private moved(all: readonly DiagonalMistake[]): Piece {
    return pieceOf(
      this.pattern,
      all.filter((mistake) => !isPlaced(mistake)),
    );
  }

  /** The slot that a knot's place belongs to. */
  private slot(row: number, place: number, all: readonly DiagonalMistake[]): number {
    const slot = this.moved(all).rows[row]?.slots[place] ?? NO_SLOT;
    return slot === NO_SLOT ? ((this.pattern.first + row) % 2) + 2 * place : slot;
  }

  private kind(
    { row, place }: { readonly row: number; readonly place: number },
    all: readonly DiagonalMistake[],
  ): KnotKind {
    const knot = this.moved(all).rows[row]?.knots[place] ?? NO_KNOT;
    return KNOT_KINDS[knot % HALF] as KnotKind;
  }

  private string(slot: number): string {
    const string = this.strings[slot];
    return string === undefined ? `the string of slot ${slot + 1}` : leadInWords(string);
  }

  private colour(colour: number): string {
    if (colour === BARE) return 'no knot';
    const found = this.pattern.colours[colour];
    if (found === undefined) return 'another colour';
    return colourInWords({ id: '', role: 'base', colour: found.hex, name: found.name });
  }

  private knotsByRow(knots: DiagonalUndo['knots'], mistakes: readonly DiagonalMistake[]): string {
    const rows = new Map<number, number[]>();
    for (const { row, place } of knots) rows.set(row, [...(rows.get(row) ?? []), place]);
    const told = [...rows].slice(0, ROWS_TOLD).map(([row, places]) => {
      const sorted = places.sort((one, other) => one - other);
      const runs: string[] = [];
      for (let i = 0; i < sorted.length; ) {
        let end = i;
        while (sorted[end + 1] === (sorted[end] as number) + 1) end++;
        const [first, last] = [sorted[i], sorted[end]] as [number, number];
        runs.push(
          slotRangeInWords(this.slot(row, first, mistakes), this.slot(row, last, mistakes)),
        );
        i = end + 1;
      }
      return `in row ${row + 1} ${runs.join(', ')}`;
    });
    const rest = rows.size - told.length;
    return told.join('; ') + (rest > 0 ? `; and so on for ${count(rest, 'row')} more` : '');
  }
}

function lookInWords(look: number): string {
  if (look === DiagonalLook.none) return 'no knot';
  if (look === DiagonalLook.half) return 'half a knot';
  return `a ${KNOT_KINDS[look] ?? 'strange'} knot`;
}

/** Places in a list, counted from 1, of which the first few are named. */
function numbers(alternatives: readonly number[]): string {
  const named = alternatives.slice(0, 5).map((at) => String(at + 1));
  const more = alternatives.length - named.length;
  return list(more > 0 ? [...named, `${more} more`] : named);
}
