import type { DiagonalCutList, DiagonalCutPiece, WorthSwapping } from '@halfhitch/geometry';
import {
  type ColourTotal,
  type CutList,
  type CutPiece,
  type Estimate,
  putUpsNeeded,
} from '@halfhitch/geometry/thread';
import { counted, figures } from '../view/figures.js';

/** The page lists no more strings than a person would read; the totals count all. */
const MOST_LINES = 200;

/** `string`: one of diagonal work, which ties and is tied onto. */
export type LineRole = CutPiece['role'] | 'string';

/** What lengths are made of. */
export type LinePart = keyof CutPiece['parts'] | keyof DiagonalCutPiece['parts'];

/** One line of the table of strings: a leading string, or others that are alike. */
export interface StringLine {
  /** The strings' own names, runs of them in short: "B1 to B14". */
  readonly strings: string;
  readonly count: number;
  readonly role: LineRole;
  readonly colour: string;
  readonly name: string;
  /** Knots tied by a string that ties; tied onto each base string. */
  readonly knots: number;
  /** mm; a part that a string cannot have is left out. */
  readonly parts: Readonly<Partial<Record<LinePart, number>>>;
  readonly length: Estimate;
  readonly cut: number;
  readonly joinedInRow: number | null;
}

export interface SheetTotal extends Omit<ColourTotal, 'role'> {
  readonly role: LineRole;
  /** Put-ups it takes if every piece turns out as long as it may. */
  readonly mostPutUps: number;
}

/** A cut list as the page shows it. */
export interface CutSheet extends Pick<CutList, 'rows' | 'thread' | 'calibration'> {
  /** "40 rows of 12 knots" */
  readonly made: string;
  readonly size: CutList['size'];
  readonly uncertainty: number;
  readonly lines: readonly StringLine[];
  /** Lines there are; more than are listed where there are very many. */
  readonly lineCount: number;
  readonly totals: readonly SheetTotal[];
  readonly joined: boolean;
  /** In diagonal work: what could be shared out more evenly. */
  readonly swaps: readonly WorthSwapping[];
  readonly putUp: number;
}

export function sheetOf(list: CutList): CutSheet {
  const { rows, columns, thread, calibration, size, uncertainty, putUp } = list;
  const lines = linesOf(list.pieces);
  return {
    rows,
    made: `${counted(rows, 'row')} of ${counted(columns, 'knot')}`,
    thread,
    calibration,
    size,
    uncertainty,
    lines: lines.slice(0, MOST_LINES),
    lineCount: lines.length,
    totals: list.totals.map((total) => ({ ...total, mostPutUps: mostPutUps(list, total) })),
    joined: list.joins.length > 0,
    swaps: [],
    putUp,
  };
}

/** A cut list of diagonal work as the page shows it; strings that are alike stand in one line. */
export function diagonalSheetOf(list: DiagonalCutList): CutSheet {
  const { rows, strings, repeats, thread, calibration, size, uncertainty, putUp, swaps } = list;
  const groups = new Map<string, DiagonalCutPiece[]>();
  for (const piece of list.pieces) {
    const alike = `${piece.cut} ${piece.knotsTied} ${piece.knotsHeld} ${piece.colour} ${piece.name}`;
    const group = groups.get(alike);
    if (group === undefined) groups.set(alike, [piece]);
    else group.push(piece);
  }
  const lines = [...groups.values()].map(diagonalLineOf);
  const times = Number.isInteger(repeats) ? figures(repeats) : figures(repeats, 1);
  return {
    rows,
    made: `${counted(rows, 'row')} on ${counted(strings, 'string')}${repeats === 1 ? '' : `, the pattern ${times} times`}`,
    thread,
    calibration,
    size,
    uncertainty,
    lines: lines.slice(0, MOST_LINES),
    lineCount: lines.length,
    totals: list.totals.map((total) => ({
      ...total,
      role: 'string',
      mostPutUps: mostPutUps(list, total),
    })),
    joined: false,
    swaps,
    putUp,
  };
}

function diagonalLineOf(group: readonly DiagonalCutPiece[]): StringLine {
  const [first] = group as readonly [DiagonalCutPiece];
  const { colour, name, parts, length, cut, knotsTied } = first;
  return {
    strings: runsOf(group.map(({ string }) => string)),
    count: group.length,
    role: 'string',
    colour,
    name,
    knots: knotsTied,
    parts,
    length,
    cut,
    joinedInRow: null,
  };
}

function linesOf(pieces: readonly CutPiece[]): StringLine[] {
  const bases = new Map<string, CutPiece[]>();
  for (const piece of pieces) {
    if (piece.role !== 'base') continue;
    const alike = `${piece.cut} ${piece.knotsHeld} ${piece.colour} ${piece.name}`;
    const group = bases.get(alike);
    if (group === undefined) bases.set(alike, [piece]);
    else group.push(piece);
  }
  const leads = pieces.filter((piece) => piece.role === 'lead');
  return [...bases.values(), ...leads.map((lead) => [lead])].map(lineOf);
}

function lineOf(group: readonly CutPiece[]): StringLine {
  const [first] = group as readonly [CutPiece];
  const { role, colour, name, parts, length, cut, joinedInRow } = first;
  return {
    strings: runsOf(group.map(({ string }) => string)),
    count: group.length,
    role,
    colour,
    name,
    knots: role === 'lead' ? first.knotsTied : first.knotsHeld,
    parts,
    length,
    cut,
    joinedInRow,
  };
}

/** Names of strings with runs of three and more in short: "B1 to B4, B6". */
export function runsOf(names: readonly string[]): string {
  const runs: string[][] = [];
  for (const name of names) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.at(-1) as string, name)) run.push(name);
    else runs.push([name]);
  }
  return runs.flatMap((run) => (run.length < 3 ? run : [`${run[0]} to ${run.at(-1)}`])).join(', ');
}

function follows(name: string, next: string): boolean {
  const [, letters, number] = /^(\D*)(\d+)$/.exec(name) ?? [];
  return letters !== undefined && next === `${letters}${Number(number) + 1}`;
}

function mostPutUps(
  {
    pieces,
    putUp,
  }: Pick<CutList, 'putUp'> & {
    readonly pieces: readonly Pick<CutPiece, 'role' | 'colour' | 'cut' | 'length'>[];
  },
  { role, colour }: ColourTotal,
): number {
  const longest = pieces
    .filter((piece) => piece.role === role && piece.colour === colour)
    .map((piece) => Math.min(putUp, piece.cut + piece.length.plusMinus));
  return putUpsNeeded(longest, putUp);
}
