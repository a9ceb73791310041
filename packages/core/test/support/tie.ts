import {
  apply,
  halvesOf,
  type KnotKind,
  type State,
  startSide,
  startState,
} from '../../src/index.js';

/** So many strings side by side, s0 at the left. */
export function hang(count: number): State {
  const strings = Array.from({ length: count }, (_, i) => ({
    id: `s${i}`,
    role: 'base' as const,
    colour: '#888888',
    name: '',
  }));
  return startState(
    strings,
    strings.map(({ id }) => id),
  );
}

/** The state after a knot of the string in a slot and its right neighbour, by the state machine. */
export function tie(state: State, slot: number, kind: KnotKind): State {
  const pair = [state.front[slot] as string, state.front[slot + 1] as string] as const;
  const [tying, held] = startSide(kind) === 'left' ? pair : [pair[1], pair[0]];
  return halvesOf(kind).reduce((now, way) => {
    const result = apply(now, { do: 'halfHitch', way, tying, held });
    if (!result.ok) throw new Error(result.fault.message);
    return result.state;
  }, state);
}

/** The place each string of the front had at the start. */
export function orderIn(state: State): number[] {
  return state.front.map((id) => Number(id.slice(1)));
}
