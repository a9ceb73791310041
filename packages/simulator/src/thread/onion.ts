import type { ThreadLine } from './thread-line.js';

/** Thickness of a line that shows a move to come or one that was, in diameters of the thread. */
const THIN = 0.26;

/** Where the tying string will be after its next move: a thin line beside the thread. */
export function ghostOf(next: readonly ThreadLine[]): ThreadLine[] {
  const tying = next.find(({ part }) => part === 'tying');
  return tying === undefined ? [] : [thin(tying, 'ghost', 'next')];
}

/** Where the tying string was at moments before: thin lines, the earliest first. */
export function trailOf(earlier: readonly (readonly ThreadLine[])[]): ThreadLine[] {
  return earlier.flatMap((lines, i) => {
    const tying = lines.find(({ part }) => part === 'tying');
    return tying === undefined ? [] : [thin(tying, `trail-${i}`, null)];
  });
}

function thin(line: ThreadLine, name: string, label: ThreadLine['label']): ThreadLine {
  return {
    ...line,
    string: `${name}:${line.string}`,
    part: 'ghost',
    diameter: THIN * line.diameter,
    label,
    labelAt: 'end',
  };
}
