import type {
  ColourTotal,
  CutList,
  CutPiece,
  DiagonalCutList,
  DiagonalCutPiece,
  Estimate,
} from '@halfhitch/geometry';

/** Hundredths of a millimetre: finer figures would only pretend to be known. */
export const rounded = (mm: number): number => Math.round(mm * 100) / 100;

export const estimate = ({ mm, plusMinus }: Estimate) => ({
  mm: rounded(mm),
  plusMinus: rounded(plusMinus),
});

/** The cut list as one object; the order of its keys is part of the stable interface. */
export function cutListAsJson(list: CutList): string {
  const answer = {
    rows: list.rows,
    columns: list.columns,
    ...measuresAsJson(list),
    strings: list.pieces.map((piece) => ({
      string: piece.string,
      role: piece.role,
      colour: piece.colour,
      name: piece.name,
      knotsTied: piece.knotsTied,
      knotsHeld: piece.knotsHeld,
      parts: partsAsJson(piece.parts),
      length: estimate(piece.length),
      cut: piece.cut,
      joinedInRow: piece.joinedInRow,
    })),
    totals: list.totals.map(totalAsJson),
    joins: list.joins.map(({ row, column }) => ({ row: row + 1, column: column + 1 })),
    putUp: list.putUp,
  };
  return `${JSON.stringify(answer)}\n`;
}

/** What a cut list says of the thread and of the piece, whatever is knotted. */
export function measuresAsJson(list: CutList | DiagonalCutList) {
  const { thread, calibration, size, uncertainty } = list;
  return {
    thread: {
      tex: rounded(thread.tex),
      diameter: rounded(thread.diameter),
      strands: thread.strands,
      fibre: thread.fibre,
    },
    size: {
      width: estimate({ mm: size.width, plusMinus: size.width * uncertainty }),
      length: estimate({ mm: size.length, plusMinus: size.length * uncertainty }),
      thickness: estimate({ mm: size.thickness, plusMinus: size.thickness * uncertainty }),
      knotAspect: rounded(size.aspect),
    },
    uncertainty: Math.round(uncertainty * 1_000) / 1_000,
    swatch:
      calibration === null
        ? null
        : {
            diameter: rounded(calibration.diameter),
            residual: {
              width: Math.round(calibration.residual.width * 1_000) / 1_000,
              length: Math.round(calibration.residual.length * 1_000) / 1_000,
            },
          },
  };
}

/** What a string is used for: millimetres by part. */
export function partsAsJson(parts: CutPiece['parts'] | DiagonalCutPiece['parts']) {
  return Object.fromEntries(Object.entries(parts).map(([part, mm]) => [part, rounded(mm)]));
}

export function totalAsJson(total: ColourTotal) {
  return {
    role: total.role,
    colour: total.colour,
    name: total.name,
    pieces: total.pieces,
    length: estimate(total.length),
    putUps: total.putUps,
  };
}
