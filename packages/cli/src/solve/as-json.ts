import { type ChartNotice, type DiagonalPicture, printDiagonalDocument } from '@halfhitch/core';
import type { DiagonalSolution, KnotPlace } from '@halfhitch/core/solve';

const place = ({ row, place: at }: KnotPlace) => ({ row: row + 1, knot: at + 1 });

/** The answer as one object; the order of its keys is part of the stable interface. */
export function solutionAsJson(
  picture: DiagonalPicture,
  notices: readonly ChartNotice[],
  solution: DiagonalSolution,
): string {
  const { status, pattern, wrong, atLeastWrong, conflict, tally, seconds } = solution;
  const { strings, rows, first } = picture;
  const answer = {
    status,
    picture: { strings, rows, first: first + 1, colours: picture.colours.length },
    wrong: wrong.map(place),
    atLeastWrong,
    conflict:
      conflict === null
        ? null
        : {
            knots: conflict.cells.map(place),
            minimal: conflict.minimal,
            message: conflict.message,
          },
    tally:
      tally === null
        ? null
        : {
            strings: tally.strings.map((count, colour) => ({
              key: picture.colours[colour]?.key,
              strings: count,
            })),
            changes: tally.changes,
            mostTied: tally.mostTied,
            fewestProven: tally.fewestProven,
          },
    seconds,
    notices: notices.map(({ code, message }) => ({ code, message })),
    pattern: pattern === null ? null : (JSON.parse(printDiagonalDocument(pattern)) as unknown),
  };
  return `${JSON.stringify(answer)}\n`;
}
