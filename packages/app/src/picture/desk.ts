import { WorkerDesk } from '../work/worker-desk.js';
import type { Answers, Request } from './messages.js';

/**
 * Has pictures unpacked, reduced and drawn, beside the page. A request takes the place of an
 * earlier one of its kind, which is given up and answered with null.
 */
export class PictureDesk extends WorkerDesk<Request, Answers> {
  constructor() {
    super(
      'picture',
      'The part that works pictures out has stopped. Choose the picture again; if that does not help, save it smaller.',
    );
  }

  /** Gives up all work, and the picture that is open. */
  close(): void {
    this.dismiss(null);
  }
}
