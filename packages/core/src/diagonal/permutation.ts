/**
 * The cycles of a permutation of slots, the longest first, each from its smallest slot; slots that
 * stay are cycles of one.
 *
 * @param permutation where each slot goes to, from 0
 */
export function cyclesOf(permutation: ArrayLike<number>): readonly (readonly number[])[] {
  const seen = new Uint8Array(permutation.length);
  const cycles: number[][] = [];
  for (let from = 0; from < permutation.length; from++) {
    if (seen[from] === 1) continue;
    const cycle: number[] = [];
    for (let at = from; seen[at] !== 1; at = permutation[at] as number) {
      seen[at] = 1;
      cycle.push(at);
    }
    cycles.push(cycle);
  }
  return cycles.sort((one, other) => other.length - one.length);
}

/**
 * How many times a permutation is done until everything is back: the least common multiple of the
 * lengths of its cycles, exactly. For 300 strings it can have 19 digits, more than a number holds
 * exactly.
 */
export function orderOf(cycles: readonly (readonly unknown[])[]): bigint {
  return cycles.reduce((order, { length }) => leastCommonMultiple(order, BigInt(length)), 1n);
}

export function leastCommonMultiple(one: bigint, other: bigint): bigint {
  let [a, b] = [one, other];
  while (b !== 0n) [a, b] = [b, a % b];
  return (one / a) * other;
}

/** The shortest stretch of which a sequence that goes round in a circle consists. */
export function periodRound(sequence: ArrayLike<number>): number {
  const { length } = sequence;
  for (let period = 1; period < length; period++) {
    if (length % period !== 0) continue;
    let same = true;
    for (let i = period; same && i < length; i++) same = sequence[i] === sequence[i - period];
    if (same) return period;
  }
  return Math.max(1, length);
}

/** The primes that divide a number, each once. */
export function primeFactors(value: number): number[] {
  const primes: number[] = [];
  let rest = value;
  for (let prime = 2; prime * prime <= rest; prime++) {
    if (rest % prime !== 0) continue;
    primes.push(prime);
    while (rest % prime === 0) rest /= prime;
  }
  if (rest > 1) primes.push(rest);
  return primes;
}
