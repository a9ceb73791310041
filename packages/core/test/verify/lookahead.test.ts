import { describe, expect, it } from 'vitest';
import { type Step, StepList } from '../../src/index.js';
import { Lookahead } from '../../src/verify/lookahead.js';
import { half } from '../support/alpha-slips.js';

const ids = ['A', 'B', 'C', 'D'];
const strings = ids.map((id) => ({ id, role: 'base' as const, colour: '#888888', name: '' }));
const place = (id: string): number => ids.indexOf(id);
const lay: Step = { do: 'layThrough', string: 'A' };
const turn: Step = { do: 'turn' };
const on = (tying: string, held: string): Step => half('forward', tying, held);
const ahead = (...steps: Step[]) => new Lookahead(StepList.from(strings, steps));

/** Steps that are no half hitches, so many that nobody looks past them. */
const far = Array.from({ length: 5000 }, () => lay);
const near = far.slice(0, 4000);

describe('the next half hitch', () => {
  it.each([
    ['is found past other steps', [on('A', 'B'), lay, lay, half('backward', 'A', 'B')], 3],
    ['is not the step itself', [on('A', 'B')], -1],
    ['is not past a turn', [on('A', 'B'), turn, on('A', 'B')], -1],
    ['is found far on', [on('A', 'B'), ...near, on('A', 'B')], 4001],
    ['is not looked for without an end', [on('A', 'B'), ...far, on('A', 'B')], -1],
  ])('%s', (_, steps, found) => {
    expect(ahead(...steps).nextHalf(0)).toBe(found);
  });

  it('is found past a turn when that is asked, and from where it is asked', () => {
    const look = ahead(on('A', 'B'), turn, on('C', 'D'), turn, on('A', 'B'));
    expect(look.nextHalf(0, true)).toBe(2);
    expect(look.nextHalf(2, true)).toBe(4);
    expect(look.nextHalf(4, true)).toBe(-1);
    expect(ahead(...near, lay, ...near, on('A', 'B')).nextHalf(3999, true, 0)).toBe(-1);
    expect(ahead(...near, lay, ...near, on('A', 'B')).nextHalf(4000, true)).toBe(8001);
  });
});

describe('the next other held string', () => {
  it.each([
    ['comes after those on the same', [on('A', 'B'), on('C', 'B'), on('A', 'C')], place('C')],
    ['may be the first of the table', [on('B', 'C'), on('B', 'A')], place('A')],
    ['is none at the end', [on('A', 'B'), on('A', 'B')], -1],
    ['is none before a turn', [on('A', 'B'), on('A', 'B'), turn, on('A', 'C')], -1],
  ])('%s', (_, steps, found) => {
    expect(ahead(...steps).nextOtherHeld(0)).toBe(found);
  });
});

describe('whether the next half hitch is the same again', () => {
  it.each([
    ['by and on the same strings', [on('A', 'B'), lay, on('A', 'B')], true],
    ['whichever way it is made', [on('A', 'B'), half('backward', 'A', 'B')], true],
    ['not by another string', [on('A', 'B'), on('C', 'B')], false],
    ['not on another string', [on('A', 'B'), on('A', 'C')], false],
    ['not past a turn', [on('A', 'B'), turn, on('A', 'B')], false],
    ['not when there is none', [on('A', 'B'), lay], false],
  ])('%s', (_, steps, same) => {
    expect(ahead(...steps).repeatsNext(0)).toBe(same);
  });
});

describe('whether a knot is finished by what follows', () => {
  it.each([
    ['by its second half', [turn, on('A', 'B')], true],
    ['by its second half, made the other way', [turn, half('backward', 'A', 'B')], true],
    ['by its second half, before another turn', [turn, on('A', 'B'), turn, on('A', 'B')], true],
    ['not by a knot of the same strings', [turn, on('A', 'B'), on('A', 'B')], false],
    ['not by half a knot of another tying string', [turn, on('C', 'B')], false],
    ['not by half a knot on another string', [turn, on('A', 'C')], false],
    ['not past another turn', [turn, turn, on('A', 'B')], false],
    ['not by nothing', [turn], false],
  ])('%s', (_, steps, finished) => {
    expect(ahead(...steps).finishes(0, place('A'), place('B'))).toBe(finished);
  });
});

describe('who ties the next knot', () => {
  it.each([
    ['is read past the knot itself', [on('C', 'B'), on('C', 'B'), on('D', 'B')], place('D')],
    ['may be the same, on another', [on('C', 'B'), on('C', 'B'), on('C', 'D')], place('C')],
    ['may be the first of the table', [on('C', 'B'), on('A', 'D')], place('A')],
    ['is read past turns', [on('C', 'B'), turn, on('C', 'B'), turn, on('D', 'B')], place('D')],
    ['is nobody at the end', [on('C', 'B'), on('C', 'B'), lay], -1],
  ])('%s', (_, steps, found) => {
    expect(ahead(...steps).tiesNextKnot(0)).toBe(found);
  });
});

describe('whether a turn comes before the next knot', () => {
  it.each([
    ['yes, when it is next', [on('A', 'B'), turn, on('A', 'C')], true],
    ['yes, past half hitches on the same', [on('A', 'B'), on('C', 'B'), turn, on('A', 'C')], true],
    ['no, past one on another', [on('A', 'B'), lay, on('A', 'C'), turn], false],
    ['as good as, at the end', [on('A', 'B'), on('A', 'B')], true],
    ['as good as, far on', [on('A', 'B'), ...far, on('A', 'C')], true],
    ['no, when the other is still in reach', [on('A', 'B'), ...near, on('A', 'C')], false],
  ])('%s', (_, steps, comes) => {
    expect(ahead(...steps).turnComesFirst(0)).toBe(comes);
  });
});
