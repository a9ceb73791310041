import {
  DIAGNOSE_LIMITS,
  InputError,
  MistakeWords,
  makeMistakes,
  planAlpha,
  readSeen,
  verifyPlan,
  Written,
} from '@halfhitch/core';
import { reasonOf } from '../work/reason.js';
import { type Sound, viewMistakes } from './make.js';
import type { MistakesAnswer, MistakesAnswers, MistakesAsk, MistakesRequest } from './messages.js';
import { offersAt } from './offers.js';
import { rowsOfSeen } from './seen-rows.js';
import { explainRows } from './tell.js';

let sound: Sound | null = null;

function take({ chart, choice }: NonNullable<MistakesAsk['piece']>): Sound {
  const plan = planAlpha(chart, choice);
  return {
    chart,
    plan,
    written: new Written(plan),
    words: new MistakeWords(plan),
    verification: verifyPlan(plan, chart),
    seen: makeMistakes(plan, []).seen,
  };
}

function answer(piece: Sound, request: MistakesRequest): MistakesAnswers[keyof MistakesAnswers] {
  switch (request.ask) {
    case 'possible':
      return offersAt(piece.written, request.place);
    case 'make':
      return viewMistakes(piece, request.mistakes, request.undo);
    case 'read': {
      const seen = readSeen(request.bytes, request.fileName, piece.plan);
      if (seen.rows * seen.columns > DIAGNOSE_LIMITS.knots) {
        throw new InputError(
          'too-many-rows-seen',
          `${request.fileName}: The rows hold ${seen.rows * seen.columns} knots.`,
          {},
          `At most ${DIAGNOSE_LIMITS.knots} can be looked into at once; leave off the rows below the first one that looks wrong.`,
        );
      }
      return rowsOfSeen(seen);
    }
    case 'diagnose':
      return explainRows(piece, request.rows);
  }
}

addEventListener('message', ({ data }: MessageEvent<MistakesAsk>) => {
  let reply: MistakesAnswer;
  try {
    if (data.piece !== null) {
      sound = null;
      sound = take(data.piece);
    }
    if (sound === null) throw new Error('No piece is open.');
    reply = { id: data.id, ok: true, value: answer(sound, data.request) };
  } catch (error) {
    const message =
      error instanceof InputError
        ? error.message
        : `Something went wrong in working this out (${reasonOf(error)}). What was marked is still there.`;
    reply = { id: data.id, ok: false, message };
  }
  postMessage(reply);
});
