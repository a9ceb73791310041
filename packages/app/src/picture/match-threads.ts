import { ciede2000, cielabOf } from '../colour/spaces.js';

/** A thread that the maker has. */
export interface OwnThread {
  /** `#rrggbb` */
  readonly hex: string;
  /** May be empty. */
  readonly name: string;
}

export interface ThreadMatch {
  /** The picture's colour, `#rrggbb`. */
  readonly hex: string;
  /** Place of the thread taken for it. */
  readonly thread: number;
  /** CIEDE2000 between the two. */
  readonly difference: number;
}

/**
 * The thread nearest to each colour by CIEDE2000; of equally near ones the first.
 *
 * @param threads at least one
 */
export function matchThreads(
  hexes: readonly string[],
  threads: readonly OwnThread[],
): ThreadMatch[] {
  const own = threads.map(({ hex }) => cielabOf(hex));
  return hexes.map((hex) => {
    const colour = cielabOf(hex);
    const differences = own.map((thread) => ciede2000(colour, thread));
    const difference = Math.min(...differences);
    return { hex, thread: differences.indexOf(difference), difference };
  });
}
