/** What a string does in the picture; says how it is marked and named, never by colour alone. */
export type ThreadPart = 'tying' | 'held' | 'old-lead' | 'resting' | 'other' | 'ghost';

/** What a string is labelled as; the words are a message of the same name. */
export type ThreadLabel = 'ties' | 'held' | 'old' | 'next';

/** One string of a pose: its centre-line and how it looks. */
export interface ThreadLine {
  /** Id of the string; the same from pose to pose. */
  readonly string: string;
  readonly part: ThreadPart;
  /** `#rrggbb`. */
  readonly colour: string;
  /**
   * Centre-line from the finished work to the free end: x, y, z triplets in mm, x to the right,
   * y up, z towards a viewer in front.
   */
  readonly points: Float32Array;
  /** Thread diameter in mm. */
  readonly diameter: number;
  /** Drawn beside the string, or null for no label. */
  readonly label: ThreadLabel | null;
  /** Drawn in the label's place where there is one: what the string itself is called. */
  readonly name?: string;
  /**
   * Where the label goes: by the string's highest point in the picture, by its free end, or on that
   * end, where other strings hang too near on both sides for a label to lie between.
   */
  readonly labelAt: 'top' | 'end' | 'on';
}

/** A box along the axes in mm, y up. */
export interface Box {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** A place to be looked at; what is farther from it than the radius is faded. Mm, y up. */
export interface Spotlight {
  readonly at: readonly [number, number, number];
  readonly radius: number;
}
