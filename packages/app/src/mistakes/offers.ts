import {
  colourInWords,
  directionOf,
  isOfTurn,
  type Mistake,
  type Plan,
  possibleMistakes,
  turnAt,
  type Written,
} from '@halfhitch/core';
import type { MistakeOffer, MistakePlace, OfferGroup } from './messages.js';

const GROUPS = ['The knot', 'The colour', 'The turn', 'The whole row'] as const;

/** The mistakes that can be made at a knot, in groups; those of a turn at both of its knots. */
export function offersAt(written: Written, { row, column }: MistakePlace): OfferGroup[] {
  const { plan, rows, columns } = written;
  const right = directionOf(plan.start, row) === 'right';
  const order = right ? column : columns - 1 - column;
  const mistakes: Mistake[] = [
    ...possibleMistakes(written, row, row, rows, { first: order, last: order }),
  ];
  if (order === 0 && row > 0) {
    const range = { first: columns - 1, last: columns - 1 };
    const before = [...possibleMistakes(written, row - 1, row - 1, rows, range)];
    mistakes.push(...before.filter(isOfTurn));
  }
  if (row > 0) mistakes.push({ kind: 'extra-row', row });
  if (rows > 1) mistakes.push({ kind: 'missing-row', row });
  return GROUPS.map((name, group) => ({
    name,
    offers: mistakes
      .filter((mistake) => groupOf(mistake) === group)
      .map((mistake): MistakeOffer => ({ mistake, label: offerInWords(mistake, plan) })),
  })).filter(({ offers }) => offers.length > 0);
}

function groupOf(mistake: Mistake): number {
  switch (mistake.kind) {
    case 'single-edge-knot':
    case 'other-edge':
      return 2;
    case 'extra-row':
    case 'missing-row':
      return 3;
    case 'wrong-kind':
    case 'skipped-string':
    case 'missing-knot':
    case 'doubled-knot':
    case 'half-knot':
      return 0;
    default:
      return 1;
  }
}

/** What the maker would do, as a button says it. */
function offerInWords(mistake: Mistake, plan: Plan): string {
  switch (mistake.kind) {
    case 'wrong-kind':
      return `Tie a ${mistake.tied} knot`;
    case 'skipped-string':
      return 'Skip this string and tie onto the next';
    case 'missing-knot':
      return 'Leave the knot out';
    case 'doubled-knot':
      return 'Tie two knots on this string';
    case 'half-knot':
      return 'Tie only half the knot';
    case 'wrong-lead': {
      const lead = plan.strings.find(({ id }) => id === mistake.lead);
      const colour = lead === undefined ? 'another colour' : colourInWords(lead);
      return mistake.span === 'knot'
        ? `Tie this knot in ${colour}`
        : `Tie this whole run in ${colour}`;
    }
    case 'single-edge-knot':
      return mistake.lacking === 'end'
        ? `Forget the edge knot that ends row ${mistake.row + 1}`
        : `Forget the edge knot that starts row ${mistake.row + 2}`;
    case 'extra-row':
      return 'Tie the row above once more';
    case 'missing-row':
      return 'Leave this row out';
    case 'early-change':
      return 'Change colour one knot early';
    case 'late-change':
      return 'Change colour one knot late';
    case 'short-run':
      return 'Count this run one knot short';
    case 'long-run':
      return 'Count the run before it one knot long';
    case 'caught-at-edge':
      return 'Catch the old lead in the edge knot';
    case 'not-caught':
      return 'Leave the old lead uncaught';
    case 'other-edge':
      return turnAt(plan.edge, directionOf(plan.start, mistake.row)) === 'inside'
        ? `Take the lead round the outside after row ${mistake.row + 1}`
        : `Turn as at a straight edge after row ${mistake.row + 1}`;
  }
}
