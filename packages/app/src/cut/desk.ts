import { OneAtATime } from '../work/one-at-a-time.js';
import type { CutOutcome, CutRequest } from './messages.js';

/** Has cut lists worked out. */
export class CutDesk extends OneAtATime<CutRequest, CutOutcome> {
  constructor() {
    super('cut', {
      errors: {
        whole: 'The part that works lengths out has stopped. Change a figure to start it again.',
      },
    });
  }
}
