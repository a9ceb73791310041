import { Machine } from '../model/machine.js';
import type { State } from '../model/state.js';
import type { StringId, ThreadString } from '../model/strings.js';

/**
 * A machine in which the strings hang as they should for the knot to come: base strings in
 * their order, the tying lead beside the held string. Having reported a mistake, the verifier
 * puts it right this way and goes on, so that one look shows every mistake and not only the first.
 *
 * @param tying,held,beside places in the table of strings; `beside` is an old lead that still
 *   hangs in front next to the new one, or -1
 * @param side where the tying lead hangs, seen from the held string
 */
export function hangForKnot(
  machine: Machine,
  tying: number,
  held: number,
  side: 'left' | 'right',
  beside: number,
): Machine {
  const before = machine.state();
  const id = (string: number): StringId => (machine.strings[string] as ThreadString).id;
  const leads = beside >= 0 ? [id(beside), id(tying)] : [id(tying)];
  const front: StringId[] = [];
  for (const base of before.hung) {
    if (base !== id(held)) front.push(base);
    else if (side === 'left') front.push(...leads, base);
    else front.push(base, ...leads.reverse());
  }
  const inFront = new Set(front);
  const state: State = {
    ...before,
    front,
    parked: [
      ...before.parked.filter((parked) => !inFront.has(parked.string)),
      ...before.front
        .filter((string) => !inFront.has(string))
        .map((string) => ({ string, at: before.at, how: 'behind' as const })),
    ],
    ended: before.ended.filter((string) => !inFront.has(string)),
    halfMade: null,
    locked: null,
  };
  return Machine.of(state);
}

/** The same machine with a string that is in front moved to the back. */
export function takeBehind(machine: Machine, string: number): Machine {
  const before = machine.state();
  const { id } = machine.strings[string] as ThreadString;
  return Machine.of({
    ...before,
    front: before.front.filter((other) => other !== id),
    parked: [...before.parked, { string: id, at: before.at, how: 'behind' }],
    // How the last old lead left has been judged before any string is moved.
    locked: null,
    lead: null,
  });
}
