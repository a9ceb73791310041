import { colourInWords, count, leadInWords } from '../instructions/wording.js';
import type { Mistake } from '../mistakes/mistake.js';
import { kindAt } from '../mistakes/script.js';
import { sourceOf } from '../mistakes/sequence.js';
import { Written } from '../mistakes/written.js';
import { startSide } from '../model/knot.js';
import { directionOf, type Plan } from '../plan/plan.js';
import { turnAt } from '../plan/turn-way.js';
import type { Undo } from './diagnosis.js';

/** Mistakes, and how they are put right, in whole sentences for the maker of a plan. */
export class MistakeWords {
  private readonly written: Written;

  constructor(private readonly plan: Plan) {
    this.written = new Written(plan);
  }

  /**
   * What was done, and how it shows.
   *
   * @param all every mistake of the piece, as rows too many and too few move the others
   */
  what(mistake: Mistake, all: readonly Mistake[] = []): string {
    const row = `row ${mistake.row + 1}`;
    const base = 'column' in mistake ? `base string ${mistake.column + 1}` : '';
    switch (mistake.kind) {
      case 'wrong-kind':
        return `A ${mistake.tied} knot is tied on ${base} in ${row}, where a ${this.kind(mistake, all)} knot belongs.`;
      case 'skipped-string':
        return `${cap(base)} is skipped in ${row}: its knot is tied onto the next string, and the colours after it are one column off.`;
      case 'missing-knot':
        return `The knot on ${base} in ${row} is left out.`;
      case 'doubled-knot':
        return `Two knots are tied on ${base} in ${row}; what comes after it in the row is one column off.`;
      case 'half-knot':
        return `Only the first half hitch of the knot on ${base} in ${row} is tied.`;
      case 'wrong-lead': {
        const lead = this.named(mistake.lead);
        return mistake.span === 'knot'
          ? `${lead} ties the knot on ${base} in ${row}, where ${this.lead(mistake, all)} belongs.`
          : `From ${base} on, ${row} is tied with ${lead} in place of ${this.lead(mistake, all)}, up to the next colour change.`;
      }
      case 'single-edge-knot':
        return `At the turn after ${row}, at the ${this.endOf(mistake.row)} edge, there is one edge knot in place of two: ${
          mistake.lacking === 'end'
            ? `the one at the end of ${row}`
            : `the one at the start of row ${mistake.row + 2}`
        } is missing.`;
      case 'extra-row':
        return `${cap(row)} is the row above it once more.`;
      case 'missing-row':
        return `A row is left out above ${row}: what should be ${row} is not there.`;
      case 'early-change':
        return `In ${row} the next colour begins one knot early, on ${base}, where ${this.colour(mistake, all)} belongs.`;
      case 'late-change':
        return `In ${row} the colour changes one knot late: ${base} still has the old one in place of ${this.colour(mistake, all)}.`;
      case 'short-run':
        return `In ${row} a run is counted one knot short: from ${base} on, the colours come one column early.`;
      case 'long-run':
        return `In ${row} a run is counted one knot long: from ${base} on, the colours come one column late.`;
      case 'caught-at-edge':
        return `At the colour change on ${base} in ${row} the old lead is caught in the edge knot, so that it sticks out at the side.`;
      case 'not-caught':
        return `At the colour change on ${base} in ${row} the old lead is not laid through the knot, so that nothing holds it.`;
      case 'other-edge':
        return turnAt(this.plan.edge, this.endOf(mistake.row)) === 'inside'
          ? `At the turn after ${row} the lead goes round the outside, as at a wrapped edge.`
          : `The turn after ${row} is made as at a straight edge.`;
    }
  }

  /** How to go on when all from the mistake on has been undone. */
  goOn(mistake: Mistake, all: readonly Mistake[] = []): string {
    const { row } = mistake;
    const rest = `go on with row ${this.source(row, all) + 1} of the instructions as written`;
    switch (mistake.kind) {
      case 'extra-row':
      case 'missing-row': {
        const due =
          sourceOf(
            row,
            all.filter((one) => one !== mistake),
          ) + 1;
        return due > this.plan.rows
          ? 'The piece is done then.'
          : `Then knot row ${due} of the instructions, and go on from there.`;
      }
      case 'single-edge-knot':
      case 'other-edge':
        return this.goOnAtTurn(mistake, all);
      case 'doubled-knot':
        return `Leave the one knot on base string ${mistake.column + 1}, and ${rest} from the string after it.`;
      case 'caught-at-edge': {
        const first = this.order(row, mistake.column) === 0;
        const how = first ? 'down and behind' : 'behind and under this knot';
        return `Pass the old lead ${how}, not through it; tie ${this.knot(mistake, all)}, and ${rest}.`;
      }
      case 'not-caught':
        return `Tie the first half of ${this.knot(mistake, all)}, lay the old lead through the middle of the knot, tie the second half, and ${rest}.`;
      default:
        return `Tie ${this.knot(mistake, all)}, and ${rest}.`;
    }
  }

  /** How to go on from the place that was undone to, whichever mistake it was. */
  goOnFrom(undo: Undo, all: readonly Mistake[] = []): string {
    const row =
      this.source(
        undo.row,
        all.filter((one) => one.row < undo.row),
      ) + 1;
    return `Go on there, with base string ${undo.column + 1}, by row ${row} of the instructions as written.`;
  }

  /** What to undo and how, a sentence each. */
  undo(undo: Undo): string[] {
    const place = `base string ${undo.column + 1} in row ${undo.row + 1}`;
    if (undo.knots === 0) return [`Nothing has to be undone: go back to ${place}.`];
    return [
      `Undo ${count(undo.knots, 'knot')}, the last one first, back to ${place}.`,
      'Of each knot undo the second half hitch first: slacken the held string, ease the loop open with a blunt needle, and draw the lead back through it; then the first half in the same way.',
      'A lead that was laid through a knot comes free when its second half is open: lay it in front again, and take the other lead behind.',
    ];
  }

  private goOnAtTurn(mistake: Mistake, all: readonly Mistake[]): string {
    const { row } = mistake;
    const side = this.endOf(row);
    if (turnAt(this.plan.edge, side) === 'outside') {
      return `Tie the last knot of row ${row + 1} and the first of row ${row + 2} as the instructions say, the lead going round the ${side} edge between them.`;
    }
    const column = side === 'right' ? this.plan.columns - 1 : 0;
    return `Tie two edge knots on base string ${column + 1}, each a ${this.kind({ row, column }, all)} knot: one ends row ${row + 1}, the other starts row ${row + 2}.`;
  }

  private source(row: number, all: readonly Mistake[]): number {
    return Math.max(0, Math.min(this.plan.rows - 1, sourceOf(row, all)));
  }

  private cell(at: { row: number; column: number }, all: readonly Mistake[]): number {
    return this.source(at.row, all) * this.plan.columns + at.column;
  }

  private kind(at: { row: number; column: number }, all: readonly Mistake[]): string {
    const kind = this.written.kind[this.cell(at, all)] as number;
    const flipped = (at.row - this.source(at.row, all)) % 2 !== 0;
    return kindAt(flipped && kind < 2 ? 1 - kind : kind);
  }

  private knot(at: { row: number; column: number }, all: readonly Mistake[]): string {
    const kind = this.kind(at, all) as Parameters<typeof startSide>[0];
    return `a ${kind} knot on base string ${at.column + 1} with ${this.lead(at, all)}, begun from its ${startSide(kind)}`;
  }

  private lead(at: { row: number; column: number }, all: readonly Mistake[]): string {
    return this.nameOf(this.written.lead[this.cell(at, all)] as number);
  }

  private colour(at: { row: number; column: number }, all: readonly Mistake[]): string {
    const string = this.plan.strings[this.written.lead[this.cell(at, all)] as number];
    return string === undefined ? 'another colour' : colourInWords(string);
  }

  private named(id: string): string {
    return this.nameOf(this.plan.strings.findIndex((string) => string.id === id));
  }

  private nameOf(place: number): string {
    const string = this.plan.strings[place];
    return string === undefined ? 'another lead' : leadInWords(string);
  }

  private endOf(row: number): 'left' | 'right' {
    return directionOf(this.plan.start, row);
  }

  private order(row: number, column: number): number {
    return this.endOf(row) === 'right' ? column : this.plan.columns - 1 - column;
  }
}

function cap(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
