import { halvesOf, type KnotKind } from '@halfhitch/core';
import { STAGE_ENDS } from '@halfhitch/geometry';

export interface KnotWords {
  /** "First half: forward half hitch" */
  readonly heading: string;
  /** The moves of this half in order, each a sentence. */
  readonly moves: readonly string[];
  /** Place in `moves` of the one being made; -1 before the first and after the last half. */
  readonly current: number;
  /** What a screen reader says now. */
  readonly said: string;
}

export interface KnotNames {
  /** What the tying string is called, such as "the lake blue lead". */
  readonly tying: string;
  /** What the held string is called, such as "base string 4". */
  readonly held: string;
}

/** The four moves of a half hitch; the last says where the string goes from there. */
export function movesOfHalf(kind: KnotKind, half: 0 | 1, names: KnotNames): string[] {
  const halves = halvesOf(kind);
  const way = halves[half];
  const [from, to] = way === 'forward' ? ['left', 'right'] : ['right', 'left'];
  const again = half === 1 && halves[0] === way;
  const { tying, held } = names;
  let leave: string;
  if (half === 0) {
    leave =
      halves[0] === halves[1]
        ? `It hangs on the ${from} again, over its own bar, ready for the second half.`
        : `It goes on over ${held} to the ${to}, ready for the second half.`;
  } else {
    leave =
      halves[0] === halves[1]
        ? `It goes on over ${held} to the ${to}: the two strings have changed places.`
        : `It goes on over ${held} to the ${to}: both strings hang where they began.`;
  }
  return [
    `Lay ${tying} over ${held} from ${from} to ${to}${again ? ', below the first half' : ''}. This is the bar.`,
    `Take it behind ${held}, back to the ${from}, above the bar.`,
    `Bring it up to the front through the loop between itself and ${held}.`,
    `Pull it snug. ${leave}`,
  ];
}

/** What is done at a position of a knot, 0 to 2. */
export function knotWords(kind: KnotKind, position: number, names: KnotNames): KnotWords {
  const halves = halvesOf(kind);
  const side = halves[0] === 'forward' ? 'left' : 'right';
  if (position <= 0) {
    return {
      heading: `${capital(kind)} knot`,
      moves: movesOfHalf(kind, 0, names),
      current: -1,
      said: `Ready for a ${kind} knot. ${capital(names.tying)} hangs to the ${side} of ${names.held}.`,
    };
  }
  // A whole number is the end of a half, not the beginning of the next.
  const half = position > 1 ? 1 : 0;
  const within = position - half;
  const moves = movesOfHalf(kind, half, names);
  const current =
    within <= STAGE_ENDS.bar + 1e-9
      ? 0
      : within <= STAGE_ENDS['turned-behind'] + 1e-9
        ? 1
        : within <= STAGE_ENDS['through-loop'] + 1e-9
          ? 2
          : 3;
  const which = half === 0 ? 'First' : 'Second';
  const done = position >= 2 ? ` The ${kind} knot is tied.` : '';
  return {
    heading: `${which} half: ${halves[half]} half hitch`,
    moves,
    current,
    said: `${which} half, ${halves[half]}, move ${current + 1} of 4. ${moves[current] ?? ''}${done}`,
  };
}

/** A whole half in one go, for when moves pass too fast to be said one by one. */
export function halfInWords(kind: KnotKind, half: 0 | 1, names: KnotNames): string {
  const which = half === 0 ? 'First' : 'Second';
  return `${which} half, ${halvesOf(kind)[half]}. ${movesOfHalf(kind, half, names).join(' ')}`;
}

export function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
