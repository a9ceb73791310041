import {
  type Chart,
  instructRow,
  type Plan,
  PlanReader,
  planAlpha,
  planStepInWords,
  type Verification,
  verifyPlan,
} from '@halfhitch/core';
import { drawTile } from './fabric-tile.js';
import type { Answer, Answers, Ask, KnotChoice, Request, RowSheet } from './messages.js';
import { readOpened } from './read-opened.js';
import { wrongInWords } from './worker-words.js';

/** The page lists no more findings than a person would read. */
const MOST_FINDINGS = 500;

interface Work {
  readonly chart: Chart;
  readonly notices: readonly string[];
  readonly choice: KnotChoice;
  readonly plan: Plan;
  readonly verification: Verification;
  readonly reader: PlanReader;
}

// Replaced only by work that came out whole: a broken file leaves what is there as it is.
let work: Work | null = null;

function make(chart: Chart, notices: readonly string[], choice: KnotChoice): Work {
  const plan = planAlpha(chart, choice);
  const verification = verifyPlan(plan, chart);
  return { chart, notices, choice, plan, verification, reader: new PlanReader(plan) };
}

function pieceOf({ chart, notices, choice, plan, verification }: Work): Answers['plan'] {
  return {
    chart,
    name: chart.name,
    rows: chart.rows,
    columns: chart.columns,
    colours: chart.colours,
    choice,
    notices,
    ok: verification.ok,
    knots: verification.knots,
    halfHitches: verification.halfHitches,
    changes: verification.changes,
    findings: verification.findings.slice(0, MOST_FINDINGS),
    findingCount: verification.findings.length,
    strings: plan.strings,
    tying: verification.tying,
    kinds: verification.kinds,
  };
}

function theWork(): Work {
  if (work === null) throw new Error('No chart is open.');
  return work;
}

function sheetOf({ plan, reader }: Work, row: number): RowSheet {
  const reading = reader.row(row);
  return {
    reading,
    previous: row > 0 ? reader.row(row - 1) : null,
    instructions: instructRow(reading, plan),
  };
}

function stepsOf({ plan, reader }: Work, row: number): Answers['steps'] {
  return reader
    .row(row)
    .knots.map(({ steps: { first, end } }) =>
      Array.from({ length: end - first }, (_, i) => planStepInWords(plan, first + i)),
    );
}

function answer(request: Request): Answers[keyof Answers] {
  switch (request.ask) {
    case 'read': {
      return readOpened(request.bytes, request.fileName);
    }
    case 'plan':
      work = make(request.chart, request.notices, request.choice);
      return pieceOf(work);
    case 'row':
      return sheetOf(theWork(), request.row);
    case 'steps':
      return stepsOf(theWork(), request.row);
    case 'tile': {
      const { plan, verification } = theWork();
      return drawTile(plan, verification, request.tile);
    }
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  let reply: Answer;
  try {
    reply = { id: data.id, ok: true, value: answer(data.request) };
  } catch (error) {
    reply = { id: data.id, ok: false, message: wrongInWords(error, 'chart') };
  }
  postMessage(reply);
});
