import {
  type BestWay,
  type Effort,
  gainInWords,
  MIRRORING_IN_WORDS,
  type Way,
} from '@halfhitch/core';

/** "From the right, mirrored left to right" */
export function wayInWords({ start, mirroring }: Way): string {
  const drawing = mirroring === 'as-drawn' ? '' : `, the drawing ${MIRRORING_IN_WORDS[mirroring]}`;
  return `From the ${start}${drawing}`;
}

/** What the best way saves beside the current one; null when the current one is best. */
export function bestInWords({ best, current }: BestWay): string | null {
  if (best === current) return null;
  return gainInWords(savedBy(best.effort, current.effort)) || 'It saves a little float.';
}

function savedBy(best: Effort, current: Effort) {
  return {
    changes: current.changes - best.changes,
    // Counted in the changes, and not what decides which way is best.
    edgeChanges: 0,
    leads: 0,
    floats: current.floats - best.floats,
    floatKnots: current.floatKnots - best.floatKnots,
    longFloats: Math.max(0, current.longFloats - best.longFloats),
    seconds: current.seconds - best.seconds,
  };
}

/** What is done to the project, for the button that takes it back. */
export function doneInWords({ best, current }: BestWay): string {
  if (best.mirroring === 'as-drawn') return `Start from the ${best.start}`;
  const drawing = best.mirroring === 'half-turn' ? 'Turn the drawing' : 'Mirror the drawing';
  return best.start === current.start ? drawing : `${drawing} and start from the ${best.start}`;
}
