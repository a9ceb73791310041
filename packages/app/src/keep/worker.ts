import { decodeUtf8, InputError, planAlpha, verifyPlan } from '@halfhitch/core';
import { written } from '../print/written.js';
import { isOutOfMemory, reasonOf } from '../work/reason.js';
import { embeddedDocument } from './embedded.js';
import type { KeepAnswer, KeepAnswers, KeepAsk, KeepRequest } from './messages.js';
import { pngOfChart } from './png-chart.js';
import { printProjectDocument, readProjectDocument } from './project-document.js';
import { svgOfPattern, svgOfPiece } from './svg-picture.js';

async function answer(request: KeepRequest): Promise<KeepAnswers[keyof KeepAnswers]> {
  switch (request.ask) {
    case 'png':
      return pngOfChart(request.chart).slice();
    case 'svg': {
      const { chart, choice } = request;
      const plan = planAlpha(chart, choice);
      return svgOfPiece(chart, plan, verifyPlan(plan, chart));
    }
    case 'diagonal-svg':
      return svgOfPattern(request.pattern);
    case 'model': {
      const { modelOfPiece } = await import('./model.js');
      return (await modelOfPiece(planAlpha(request.chart, request.choice))).slice();
    }
    case 'project':
      return printProjectDocument(request.project, request.progress);
    case 'written':
      return written(request.chart, request.choice, request.rows);
    case 'read-project': {
      const { project, progress, notices } = readProjectDocument(decodeUtf8(request.bytes));
      return { project, progress, notices: notices.map(({ message }) => message) };
    }
    case 'read-embedded':
      return embeddedDocument(decodeUtf8(request.bytes));
  }
}

function inWords(error: unknown, request: KeepRequest): string {
  if (error instanceof InputError) {
    return 'fileName' in request ? error.inFile(request.fileName).message : error.message;
  }
  if (isOutOfMemory(error)) {
    return 'The browser has not enough memory for this. Close other pages, or use a smaller piece.';
  }
  return `Something went wrong (${reasonOf(error)}). What is open stays as it is.`;
}

addEventListener('message', ({ data: { id, request } }: MessageEvent<KeepAsk>) => {
  answer(request).then(
    (value) => postMessage({ id, ok: true, value } satisfies KeepAnswer),
    (error: unknown) =>
      postMessage({ id, ok: false, message: inWords(error, request) } satisfies KeepAnswer),
  );
});
