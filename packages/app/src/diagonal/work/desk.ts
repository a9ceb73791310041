import { WorkerDesk } from '../../work/worker-desk.js';
import type { DiagonalAnswers, DiagonalRequest } from './messages.js';

/** Hands diagonal patterns to a worker, where they are planned and verified. */
export class DiagonalDesk extends WorkerDesk<DiagonalRequest, DiagonalAnswers> {
  constructor() {
    super(
      'diagonal',
      'The part that works diagonal patterns out has stopped. Open the pattern again, a smaller one if it stops again.',
    );
  }
}
