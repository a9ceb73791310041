import type { DiagonalPicture } from '@halfhitch/core';
import type { ForcedKnots } from '@halfhitch/core/solve';
import { startWorker } from '../../work/trusted-workers.js';
import { WorkError } from '../../work/work-error.js';
import type { SolveAsk, SolveTold } from './messages.js';

/** Long enough for what a person would draw. */
const SECONDS = 30;

/**
 * Reads a picture the other way round, in a worker of its own: which kinds its knots can have.
 *
 * @param until gives it up
 * @throws WorkError with a message for the user
 */
export function readForced(wanted: DiagonalPicture, until: AbortSignal): Promise<ForcedKnots> {
  const worker = startWorker('solve');
  const reading = new Promise<ForcedKnots>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<SolveTold>) => {
      if (data.told === 'forced') resolve(data.forced);
      else if (data.told === 'problem') reject(new WorkError(data.message));
    });
    worker.addEventListener('error', () =>
      reject(new WorkError('The picture could not be read. Try again, with a smaller one.')),
    );
    until.addEventListener('abort', () => reject(new WorkError('Given up.')), { once: true });
    worker.postMessage({ say: 'read', wanted, seconds: SECONDS } satisfies SolveAsk);
  });
  return reading.finally(() => worker.terminate());
}
