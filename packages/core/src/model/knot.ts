/** A forward half is made by the left string over the right one; a backward half is its mirror. */
export type HalfWay = 'forward' | 'backward';

/** A knot is two half hitches, named after the first and the second. */
export type KnotKind = 'forward' | 'backward' | 'forward-backward' | 'backward-forward';

export const KNOT_KINDS: readonly KnotKind[] = [
  'forward',
  'backward',
  'forward-backward',
  'backward-forward',
];

const HALVES: Readonly<Record<KnotKind, readonly [HalfWay, HalfWay]>> = {
  forward: ['forward', 'forward'],
  backward: ['backward', 'backward'],
  'forward-backward': ['forward', 'backward'],
  'backward-forward': ['backward', 'forward'],
};

/** The two half hitches of a knot, in the order they are tied. */
export function halvesOf(kind: KnotKind): readonly [HalfWay, HalfWay] {
  return HALVES[kind];
}

/** The knot that two half hitches make. */
export function kindOf(first: HalfWay, second: HalfWay): KnotKind {
  if (first === second) return first;
  return first === 'forward' ? 'forward-backward' : 'backward-forward';
}

/** Whether the tying and the held string change places: true of forward and backward knots. */
export function changesPlaces(kind: KnotKind): boolean {
  return kind === 'forward' || kind === 'backward';
}

/** The side of the held string on which the tying string hangs before the knot. */
export function startSide(kind: KnotKind): 'left' | 'right' {
  return HALVES[kind][0] === 'forward' ? 'left' : 'right';
}

/** The same knot seen in a mirror, as a left-handed maker ties it. */
export function mirrorKnot(kind: KnotKind): KnotKind {
  switch (kind) {
    case 'forward':
      return 'backward';
    case 'backward':
      return 'forward';
    case 'forward-backward':
      return 'backward-forward';
    case 'backward-forward':
      return 'forward-backward';
  }
}

/** In print and in files a knot is marked by the way its lead travels. */
export const KNOT_MARKS: Readonly<Record<KnotKind, string>> = {
  forward: '\\',
  backward: '/',
  'forward-backward': '>',
  'backward-forward': '<',
};

/** The knot a mark stands for, or undefined when it is no mark. */
export function kindOfMark(mark: string): KnotKind | undefined {
  return KNOT_KINDS.find((kind) => KNOT_MARKS[kind] === mark);
}
