/** The middle one of some figures. */
export function median(figures) {
  return [...figures].sort((a, b) => a - b)[Math.floor(figures.length / 2)];
}

/** Milliseconds that work takes. */
export function timed(work) {
  const before = performance.now();
  work();
  return performance.now() - before;
}

/** Milliseconds that work takes in the middle one of some rounds. */
export function medianTime(rounds, work) {
  return median(Array.from({ length: rounds }, () => timed(work)));
}

/** Whole numbers below one given, the same in every run. */
export function numbersFrom(seed) {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return Math.floor((state / 4_294_967_296) * below);
  };
}
