import { describe, expect, it } from 'vitest';
import { announced, type InHand, inHand, spoken, spokenStep } from '../../src/tie/in-hand.js';
import { placeAfter } from '../../src/tie/shape.js';
import { CHOICE, chartOf, rowsOf } from './works.js';

const chart = chartOf(['bbbbbbbb', 'bboooobb']);
const rows = rowsOf({ chart, choice: CHOICE });

function handAt(done: number): InHand {
  const place = placeAfter(done, { rows: 2, columns: 8, start: 'left' });
  const row = place === null ? undefined : rows[place.row];
  const hand =
    place === null || row === undefined ? null : inHand(row, rows[place.row + 1] ?? null, place);
  if (hand === null) throw new Error('No knot there.');
  return hand;
}

describe('what is said aloud', () => {
  it.each([
    [1, '6 forward knots. The first on base string 2.'],
    [2, 'Base string 3, forward.'],
    [7, 'Forward-backward knot on base string 8.'],
    [
      8,
      'Row 2. This row goes from right to left. L1 (lake blue) leads first; the lead changes 2 times. Forward-backward knot on base string 8.',
    ],
  ])('after %d knots: %s', (done, text) => {
    expect(spoken(handAt(done))).toBe(text);
  });

  it('is all of a colour change, at once or step by step', () => {
    const hand = handAt(10);
    expect(hand.change).toMatch(/^Colour change at base string 6 .* from L1 \(lake blue\) to L2/);
    expect(spoken(hand)).toBe(`${hand.change} ${hand.steps.join(' ')}`);
    const steps = hand.steps.map((_, step) => spokenStep(hand, step));
    expect(steps.join(' ')).toBe(spoken(hand));
    expect(steps[1]).toBe(hand.steps[1]);
    // Of a knot without a change, both half hitches and no more.
    expect(handAt(2).steps).toHaveLength(2);
  });
});

it('a screen reader is told the place and the knot', () => {
  expect(announced(handAt(2), 8)).toBe('Row 1, knot 3 of 8: a forward knot on base string 3.');
  expect(announced(handAt(10), 8)).toBe(
    'Row 2, knot 3 of 8: colour change; a backward knot on base string 6.',
  );
});
