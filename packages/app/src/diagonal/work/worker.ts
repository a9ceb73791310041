import {
  type DiagonalPattern,
  planDiagonal,
  repeatInWords,
  repeatOf,
  simulateDiagonal,
} from '@halfhitch/core';
import { wrongInWords } from '../../work/worker-words.js';
import type { DiagonalAnswer, DiagonalAnswers, DiagonalAsk, DiagonalRequest } from './messages.js';
import { sharesOf } from './shares.js';

function prove(pattern: DiagonalPattern, notices: readonly string[]): DiagonalAnswers['prove'] {
  const plan = planDiagonal(pattern);
  const reading = simulateDiagonal(pattern);
  const knots = pattern.knots.reduce((sum, kind) => sum + (kind > 3 ? 0 : 1), 0);
  return {
    pattern,
    notices,
    reading,
    strings: plan.strings,
    knots,
    halfHitches: 2 * knots,
    shares: sharesOf(reading),
    repeat: repeatInWords(repeatOf(pattern)),
  };
}

function answer(request: DiagonalRequest): DiagonalAnswers[keyof DiagonalAnswers] {
  switch (request.ask) {
    case 'prove':
      return prove(request.pattern, request.notices);
  }
}

addEventListener('message', ({ data }: MessageEvent<DiagonalAsk>) => {
  let reply: DiagonalAnswer;
  try {
    reply = { id: data.id, ok: true, value: answer(data.request) };
  } catch (error) {
    reply = { id: data.id, ok: false, message: wrongInWords(error, 'pattern') };
  }
  postMessage(reply);
});
