import { WorkerDesk } from '../work/worker-desk.js';
import type { KeepAnswers, KeepRequest } from './messages.js';

/** Has files written and read, beside the page. One for the whole page. */
export const keepDesk = new WorkerDesk<KeepRequest, KeepAnswers>(
  'keep',
  'The part that reads and writes files has stopped. Try again, with a smaller piece if it stops again.',
);
