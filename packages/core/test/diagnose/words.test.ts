import { expect, it } from 'vitest';
import {
  diagnose,
  diagnosisText,
  MISTAKE_KINDS,
  MistakeWords,
  makeMistakes,
  planAlpha,
} from '../../src/index.js';
import { drawn, generator } from '../support/charts.js';
import { plant, randomPlan } from '../support/planted.js';

const plan = planAlpha(drawn('aaabbb', 'aaabbb', 'aaabbb'));

it('Says what happened, what to undo and how to go on', () => {
  const { seen } = makeMistakes(plan, [{ kind: 'wrong-kind', row: 1, column: 2, tied: 'forward' }]);
  expect([...diagnosisText(plan, diagnose(plan, seen))]).toEqual([
    'What was seen differs from the plan. One explanation was found; it takes one mistake.',
    '',
    'Explanation 1 (all of those listed)',
    '  A forward knot is tied on base string 3 in row 2, where a backward knot belongs.',
    '  Undo 9 knots, the last one first, back to base string 3 in row 2.',
    '  Of each knot undo the second half hitch first: slacken the held string, ease the loop open with a blunt needle, and draw the lead back through it; then the first half in the same way.',
    '  A lead that was laid through a knot comes free when its second half is open: lay it in front again, and take the other lead behind.',
    '  Tie a backward knot on base string 3 with L1 (colour a), begun from its right, and go on with row 2 of the instructions as written.',
  ]);
});

it('Says that nothing differs', () => {
  expect([...diagnosisText(plan, [])]).toEqual(['Nothing differs from the plan in what was seen.']);
});

it('Has whole sentences for every mistake, and names the knot that makes it right', () => {
  for (let seed = 0; seed < 160; seed++) {
    const sound = randomPlan(seed);
    const kind = MISTAKE_KINDS[seed % MISTAKE_KINDS.length] ?? 'half-knot';
    const [mistake] = plant(sound, [kind], generator(seed)) ?? [];
    if (mistake === undefined) continue;
    const words = new MistakeWords(sound);
    for (const text of [words.what(mistake, [mistake]), words.goOn(mistake, [mistake])]) {
      expect(text).toMatch(/^[A-Z].*\.$/);
      expect(text).not.toMatch(/undefined|NaN|null|another (lead|colour)/);
    }
  }
});
