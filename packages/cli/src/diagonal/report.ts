import {
  type ChartNotice,
  type DiagonalFinding,
  type DiagonalPattern,
  type DiagonalPicture,
  type DiagonalPlan,
  type DiagonalRepeat,
  type DiagonalVerification,
  diagonalFindingInWords,
  KNOT_KINDS,
  kindsInWords,
  orderInWords,
  printable,
  repeatInWords,
  repeatOf,
  type ThreadString,
} from '@halfhitch/core';
import { ExitCode } from '../exit-code.js';
import { writeOutput } from '../files/write-output.js';

/** What a report is about: steps that were run, and what they were compared with. */
export interface DiagonalReported {
  /** Null where only a picture is known: it does not say what happens in a repeat. */
  readonly pattern: DiagonalPattern | null;
  readonly wanted?: DiagonalPicture;
  readonly notices: readonly ChartNotice[];
  readonly plan: DiagonalPlan;
  readonly verification: DiagonalVerification;
}

export interface DiagonalReportOptions {
  readonly json: boolean;
  /** Whether the order of the strings after every row is told. */
  readonly order: boolean;
}

/** A finding of the verifier, or a notice of the reader of the pattern as one. */
type ReportedFinding = Omit<DiagonalFinding, 'code'> & { readonly code: string };

function reported({ notices, verification }: DiagonalReported): readonly ReportedFinding[] {
  const nowhere = { row: null, place: null, slot: null };
  const notes = notices.map(
    ({ code, message }): ReportedFinding => ({ grade: 'note', code, ...nowhere, message }),
  );
  return [...notes, ...verification.findings];
}

/** The strings in front before the first row and after each. */
function* ordersOf({ plan, verification }: DiagonalReported): Generator<ThreadString[]> {
  const { order, strings, rows } = verification;
  for (let row = 0; row <= rows; row++) {
    const hanging = order.subarray(row * strings, (row + 1) * strings);
    yield Array.from(hanging, (string) => plan.strings[string] as ThreadString);
  }
}

/** Numbers as JSON has them; beyond what it keeps exactly, their digits. */
function exact(number: bigint): number | string {
  return number <= BigInt(Number.MAX_SAFE_INTEGER) ? Number(number) : String(number);
}

function repeatAsJson(repeat: DiagonalRepeat) {
  const fromOne = (slots: ArrayLike<number>): number[] => Array.from(slots, (slot) => slot + 1);
  return {
    sidesClose: repeat.sidesClose,
    rowsApart: repeat.rowsApart,
    permutation: fromOne(repeat.permutation),
    cycles: repeat.cycles.map(fromOne),
    order: exact(repeat.order),
    coloursCloseAfter: exact(repeat.coloursCloseAfter),
    knotsRepeatRows: repeat.knotsRepeatRows,
    stringsRepeatRows: exact(repeat.stringsRepeatRows),
    smallestRepeatRows: exact(repeat.smallestRepeatRows),
    shiftedRepeat:
      repeat.shiftedRepeat === null
        ? null
        : { rows: repeat.shiftedRepeat.rows, slots: repeat.shiftedRepeat.slots },
  };
}

/** How many knots of each kind the steps tied. */
function kindsAsJson({ kinds }: DiagonalVerification): Record<string, number> {
  const counts = KNOT_KINDS.map((kind): [string, number] => [kind, 0]);
  for (const kind of kinds) {
    const count = counts[kind];
    if (count !== undefined) count[1]++;
  }
  return Object.fromEntries(counts);
}

function coloursHung({ strings }: DiagonalPlan): number {
  return new Set(strings.map(({ colour }) => colour)).size;
}

/** The report as one object; the order of its keys is part of the stable interface. */
function* asJson(of: DiagonalReported, order: boolean): Generator<string> {
  const { verification, plan, pattern } = of;
  const report = {
    ok: verification.ok,
    pattern: {
      strings: verification.strings,
      rows: verification.rows,
      first: plan.lattice.first + 1,
      colours: coloursHung(plan),
    },
    knots: verification.knots,
    halfHitches: verification.halfHitches,
    kinds: kindsAsJson(verification),
    repeat: pattern === null ? null : repeatAsJson(repeatOf(pattern)),
    order: order ? [...ordersOf(of)].map((strings) => strings.map(({ id }) => id)) : null,
    findings: reported(of).map(({ grade, code, row, place, slot, message }) => ({
      grade,
      code,
      row,
      place,
      slot,
      message,
    })),
  };
  yield `${JSON.stringify(report)}\n`;
}

function* asText(title: string, of: DiagonalReported, order: boolean): Generator<string> {
  const { verification, plan, pattern } = of;
  const { ok, knots, halfHitches, strings, rows } = verification;
  const counted = (number: number, one: string): string =>
    `${number} ${number === 1 ? one : `${one}s`}`;
  yield `${printable(title)}: ${ok ? 'it knots out as drawn' : 'it does not knot out as drawn'}.\n`;
  yield `A diagonal pattern: ${counted(strings, 'string')}, ${counted(rows, 'row')}, ${counted(coloursHung(plan), 'colour')}; ${counted(knots, 'knot')}, ${halfHitches} half hitches.\n`;
  if (pattern !== null) {
    yield `${kindsInWords(pattern)}\n`;
    for (const sentence of repeatInWords(repeatOf(pattern))) yield `${sentence}\n`;
  }
  if (order) {
    yield '\nStrings from the left\n';
    let row = 0;
    for (const hanging of ordersOf(of)) {
      yield `  ${row === 0 ? 'at the start' : `after row ${row}`}: ${orderInWords(hanging)}\n`;
      row++;
    }
    yield '\n';
  }
  for (const finding of reported(of)) {
    // What a repeat does has been told already.
    if (pattern !== null && finding.code === 'repeat-does-not-close') continue;
    yield `${diagonalFindingInWords(finding)}\n`;
  }
}

/** Prints what was found; the exit code says whether it knots out as drawn. */
export async function diagonalReport(
  title: string,
  of: DiagonalReported,
  { json, order }: DiagonalReportOptions,
): Promise<ExitCode> {
  await writeOutput('-', json ? asJson(of, order) : asText(title, of, order));
  return of.verification.ok ? ExitCode.fine : ExitCode.differs;
}
