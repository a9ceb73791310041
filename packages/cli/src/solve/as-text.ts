import {
  BARE,
  type ChartNotice,
  type DiagonalPattern,
  type DiagonalPicture,
  firstSlotOf,
  knotIndex,
  knotsInRow,
  printable,
  simulateDiagonal,
} from '@halfhitch/core';
import { type DiagonalSolution, placesInWords } from '@halfhitch/core/solve';

/** Rows that are drawn whole; of more, only those with a knot that differs. */
const ROWS_DRAWN = 100;

/** The answer for people. */
export function* solutionAsText(
  title: string,
  picture: DiagonalPicture,
  notices: readonly ChartNotice[],
  solution: DiagonalSolution,
  { out, atMostWrong = 0 }: { readonly out?: string; readonly atMostWrong?: number },
): Generator<string> {
  const { pattern, conflict, tally, wrong } = solution;
  yield `${printable(title)}: ${verdict(solution, atMostWrong)}\n`;
  yield `${picture.strings} strings, ${picture.rows} rows; ${solution.seconds.toFixed(1)} s.\n`;
  for (const { message } of notices) yield `note: ${message}\n`;
  if (conflict !== null) yield `${conflict.message}\n`;
  if (pattern === null || tally === null) return;
  if (wrong.length > 0) {
    yield `\n${nearest(solution)}\n`;
    yield `${placesInWords(wrong)}.\n\n`;
    yield* drawn(
      picture,
      pattern,
      wrong.map(({ cell }) => cell),
    );
    yield '\n';
  }
  const hung = picture.colours.flatMap(({ key, name, hex }, colour) => {
    const count = tally.strings[colour] as number;
    return count === 0 ? [] : [`${count} of ${name || hex} (${key})`];
  });
  yield `Strings: ${hung.join(', ')}.\n`;
  if (tally.fewestProven === false) {
    yield 'Whether fewer strings of that colour would do was not known when the time was over.\n';
  }
  yield `Changes of kind along the rows: ${tally.changes}. The string that ties most ties ${tally.mostTied} knots.\n`;
  if (out === '-') return;
  yield out === undefined
    ? 'Name a file with -o to keep the pattern.\n'
    : `The pattern is in ${printable(out)}.\n`;
}

function verdict({ status, wrong, pattern }: DiagonalSolution, allowed: number): string {
  if (status === 'solved') {
    return wrong.length === 0
      ? 'it can be knotted as drawn.'
      : `it can be knotted but for ${counted(wrong.length)}.`;
  }
  if (status === 'impossible') {
    return allowed === 0
      ? 'it cannot be knotted as drawn.'
      : `it cannot be knotted with so few as ${counted(allowed)} different.`;
  }
  return pattern !== null && wrong.length > 0
    ? 'time ran out before it was known whether it can be knotted so.'
    : 'time ran out before a way to knot it was found.';
}

function nearest({ wrong, atLeastWrong }: DiagonalSolution): string {
  const { length } = wrong;
  const known =
    length === atLeastWrong
      ? 'no pattern is nearer'
      : atLeastWrong > 0
        ? `at least ${atLeastWrong} must differ; whether as many as this is not known`
        : 'whether a nearer one exists is not known';
  return `The nearest pattern found shows another colour in ${counted(length)} (${known}):`;
}

function counted(knots: number): string {
  return knots === 1 ? '1 knot' : `${knots} knots`;
}

/** The picture that a pattern shows, in brick position, an exclamation mark after what differs. */
function* drawn(
  wanted: DiagonalPicture,
  pattern: DiagonalPattern,
  wrong: readonly number[],
): Generator<string> {
  const { picture } = simulateDiagonal(pattern);
  const differing = new Set(wrong);
  const width = String(wanted.rows).length;
  for (let row = 0; row < wanted.rows; row++) {
    let line = ' '.repeat(firstSlotOf(wanted, row));
    let differs = false;
    for (let place = 0; place < knotsInRow(wanted, row); place++) {
      const cell = knotIndex(wanted, row, place);
      const colour = picture.cells[cell] as number;
      const marked = differing.has(cell);
      differs ||= marked;
      line += `${colour === BARE ? '.' : wanted.colours[colour]?.key}${marked ? '!' : ' '}`;
    }
    if (wanted.rows > ROWS_DRAWN && !differs) continue;
    yield `${String(row + 1).padStart(width)}  ${line.trimEnd()}\n`;
  }
}
