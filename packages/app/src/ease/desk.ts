import { OneAtATime } from '../work/one-at-a-time.js';
import type { EaseOutcome, EaseRequest } from './messages.js';

/** Has charts looked through for what would make them easier. */
export class EaseDesk extends OneAtATime<EaseRequest, EaseOutcome> {
  constructor() {
    super('ease', {
      problem: 'The part that looks for what would be easier has stopped. Look again to start it.',
    });
  }
}
