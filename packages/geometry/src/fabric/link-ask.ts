import { mirrorCode } from './shapes.js';

/**
 * What a lead does between its knots:
 * `on` to the next knot, in the row or at a turn; `up` from the back into its first knot; and, when
 * another lead takes over, `through` that lead's first knot, `behind` it, or `down`, to the back.
 * `end` hangs down from the last knot of the piece.
 */
export type LinkWay = 'on' | 'up' | 'through' | 'behind' | 'down' | 'end';

/** Kind codes of the knots round a knot: steps to the right and down from it; NO_KNOT for none. */
export type Around = (right: number, down: number) => number;

export interface LinkAsk {
  readonly way: LinkWay;
  /** Kinds of the knots round the one it leads to. */
  readonly around: Around;
  /** Where the knot that the lead comes from is, as seen from the other one. */
  readonly from: { readonly right: number; readonly down: number };
  /** Height at which a way to or from the back passes, from the middle of that knot. */
  readonly lane?: number;
  /** How far the gaps right of the knots -2, -1, 0 are open. Default: closed. */
  readonly open?: readonly number[];
  /** Whether an old lead lies under the riding turn of a knot near it. Default: nowhere. */
  readonly lifted?: (right: number, down: number) => boolean;
  /** What is there before it and comes near it. */
  readonly others?: readonly Other[];
}

/** Another way, and where the knot it leads to is as seen from the knot that the link leads to. */
export interface Other {
  readonly ask: LinkAsk;
  readonly right: number;
  readonly down: number;
  /** Whether its row goes the other way. */
  readonly mirrored: boolean;
}

/** The knots that a link looks at, as steps from the one it leads to. */
export const BLOCK: Readonly<Record<'left' | 'right' | 'up' | 'down', number>> = {
  left: -2,
  right: 1,
  up: -1,
  down: 1,
};

/** What stands for all that is asked. */
export function keyOf(ask: LinkAsk): string {
  const { way, from, around, lane, open = [], lifted, others = [] } = ask;
  let key = `${way} ${from.right} ${from.down} ${lane?.toFixed(3) ?? ''}`;
  key += ` ${open.map((v) => v.toFixed(3)).join()}:`;
  key += codesRound(around) + liftedRound(lifted);
  for (const { ask: other, right, down, mirrored } of others) {
    key += `[${right} ${down} ${mirrored ? 1 : 0} ${keyOf(other)}]`;
  }
  return key;
}

/** The kinds that a link looks at. */
export function codesRound(around: Around): string {
  let codes = '';
  for (let down = BLOCK.up; down <= BLOCK.down; down++) {
    for (let right = BLOCK.left; right <= BLOCK.right; right++) codes += around(right, down) + 1;
  }
  return codes;
}

function liftedRound(lifted: LinkAsk['lifted']): string {
  if (!lifted) return '';
  let marks = '';
  for (let down = BLOCK.up; down <= BLOCK.down; down++) {
    for (let right = BLOCK.left; right <= BLOCK.right; right++) {
      if (lifted(right, down)) marks += ` ${right} ${down}`;
    }
  }
  return marks;
}

/** Kinds round a knot seen in a mirror. */
export const mirroredAround =
  (around: Around): Around =>
  (right, down) =>
    mirrorCode(around(-right, down));
