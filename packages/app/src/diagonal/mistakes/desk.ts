import { OneAtATime } from '../../work/one-at-a-time.js';
import type { LookRequest, Told } from './messages.js';

/** Has what was seen explained. */
export class LookDesk extends OneAtATime<LookRequest, Told> {
  constructor() {
    super('diagonalMistakes', {
      what: 'problem',
      message: 'The part that looks into mistakes has stopped. Ask again to start it anew.',
    });
  }
}
