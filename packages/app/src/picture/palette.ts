import { kmeansGenerator } from 'ml-kmeans';
import { hexOfOklab } from '../colour/spaces.js';

/** So many knots show which colours a picture has; all of a larger one would only take longer. */
const MOST_SAMPLES = 16_384;
const MOST_ROUNDS = 40;
/** Two centres nearer than this, squared, have come to rest: far below what eyes see. */
const AT_REST = 1e-6;
/** Any number does: a picture must give the same colours each time. */
const SEED = 1709;

/**
 * Reduces colours to so many by k-means (started by k-means++) in OKLab, where distances are near
 * to what is seen. Each group is shown by its median, channel by channel, not by its mean, so that
 * the flat colours of a drawing come out as they are and not mixed with those of its soft edges.
 *
 * A generator, so that work can be given up between rounds.
 *
 * @param oklab L, a and b of each knot
 * @param count most colours wanted, at least 1
 * @returns `#rrggbb` of different colours, commonest first
 */
export function* reduceColours(
  oklab: Float32Array,
  count: number,
): Generator<undefined, string[], undefined> {
  const few = fewColours(oklab, count);
  if (few !== null) return few;
  const points = samples(oklab);
  let groups: readonly number[] = [];
  const rounds = kmeansGenerator(points, Math.min(count, points.length), {
    seed: SEED,
    maxIterations: MOST_ROUNDS,
    tolerance: AT_REST,
  });
  for (const round of rounds) {
    groups = round.clusters;
    yield;
  }
  const members = new Map<number, number[][]>();
  groups.forEach((group, i) => {
    const its = members.get(group) ?? [];
    its.push(points[i] as number[]);
    members.set(group, its);
  });
  const bySize = [...members.values()].sort((one, other) => other.length - one.length);
  return [...new Set(bySize.map(medianHex))];
}

/** The colours as they are, where there are no more than wanted; else null. */
function fewColours(oklab: Float32Array, count: number): string[] | null {
  const counts = new Map<string, number>();
  for (let at = 0; at < oklab.length; at += 3) {
    const hex = hexAt(oklab, at);
    counts.set(hex, (counts.get(hex) ?? 0) + 1);
    if (counts.size > count) return null;
  }
  return [...counts].sort(([, one], [, other]) => other - one).map(([hex]) => hex);
}

function samples(oklab: Float32Array): number[][] {
  const knots = oklab.length / 3;
  const taken = Math.min(knots, MOST_SAMPLES);
  return Array.from({ length: taken }, (_, i) => {
    const at = 3 * Math.floor((i * knots) / taken);
    return [oklab[at] as number, oklab[at + 1] as number, oklab[at + 2] as number];
  });
}

function medianHex(members: readonly number[][]): string {
  const median = (channel: number): number => {
    const values = members
      .map((point) => point[channel] as number)
      .sort((one, other) => one - other);
    return values[values.length >> 1] as number;
  };
  return hexOfOklab({ l: median(0), a: median(1), b: median(2) });
}

function hexAt(oklab: Float32Array, at: number): string {
  return hexOfOklab({
    l: oklab[at] as number,
    a: oklab[at + 1] as number,
    b: oklab[at + 2] as number,
  });
}
