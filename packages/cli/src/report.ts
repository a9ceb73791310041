import {
  type Chart,
  type ChartNotice,
  changesInWords,
  coloursUsed,
  type Finding,
  findingInWords,
  printable,
  type Verification,
} from '@halfhitch/core';
import { ExitCode } from './exit-code.js';
import { writeOutput } from './files/write-output.js';

/** A finding of the verifier, or a notice of the reader of the chart as one. */
type ReportedFinding = Omit<Finding, 'code'> & { readonly code: string };

function reported(
  notices: readonly ChartNotice[],
  verification: Verification,
): readonly ReportedFinding[] {
  const notes = notices.map(
    ({ code, message }): ReportedFinding => ({
      grade: 'note',
      code,
      row: null,
      column: null,
      message,
    }),
  );
  return [...notes, ...verification.findings];
}

/** The report as one object; the order of its keys is part of the stable interface. */
function asJson(chart: Chart, notices: readonly ChartNotice[], verification: Verification): string {
  const { withinRow, afterFirstKnot, lastKnot, turn, start } = verification.changes;
  const report = {
    ok: verification.ok,
    chart: { rows: chart.rows, columns: chart.columns, colours: coloursUsed(chart) },
    knots: verification.knots,
    halfHitches: verification.halfHitches,
    changes: { withinRow, afterFirstKnot, lastKnot, turn, start },
    findings: reported(notices, verification).map(({ grade, code, row, column, message }) => ({
      grade,
      code,
      row,
      column,
      message,
    })),
  };
  return `${JSON.stringify(report)}\n`;
}

function* asText(
  title: string,
  chart: Chart,
  notices: readonly ChartNotice[],
  verification: Verification,
): Generator<string> {
  const colours = coloursUsed(chart);
  const { ok, knots, halfHitches } = verification;
  yield `${printable(title)}: ${ok ? 'it knots out as drawn' : 'it does not knot out as drawn'}.\n`;
  yield `${chart.rows} rows, ${chart.columns} columns, ${colours} ${colours === 1 ? 'colour' : 'colours'}; ${knots} knots, ${halfHitches} half hitches.\n`;
  yield `${changesInWords(verification.changes)}\n`;
  for (const finding of reported(notices, verification)) {
    yield `${findingInWords(finding as Finding)}\n`;
  }
}

/** Prints what was found; the exit code says whether it knots out as drawn. */
export async function report(
  title: string,
  chart: Chart,
  notices: readonly ChartNotice[],
  verification: Verification,
  json: boolean,
): Promise<ExitCode> {
  await writeOutput(
    '-',
    json ? [asJson(chart, notices, verification)] : asText(title, chart, notices, verification),
  );
  return verification.ok ? ExitCode.fine : ExitCode.differs;
}
