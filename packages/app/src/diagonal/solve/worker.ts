import { forcedKnots, solveDiagonal } from '@halfhitch/core/solve';
import { wrongInWords } from '../../work/worker-words.js';
import type { SolveAsk, SolveTold } from './messages.js';

// One search for each worker: it is hired anew for the next.
const signal = { aborted: false };

addEventListener('message', ({ data }: MessageEvent<SolveAsk>) => {
  if (data.say === 'stop') {
    signal.aborted = true;
    return;
  }
  if (data.say === 'read') {
    const { wanted, seconds } = data;
    forcedKnots(wanted, { seconds, signal }).then(
      (forced) => tell({ told: 'forced', forced }),
      (error: unknown) => tell({ told: 'problem', message: wrongInWords(error, 'picture') }),
    );
    return;
  }
  solveDiagonal(data.wanted, {
    ...data.wish,
    signal,
    onProgress: (progress) => tell({ told: 'progress', progress }),
  }).then(
    (solution) => tell({ told: 'solution', solution }),
    (error: unknown) => tell({ told: 'problem', message: wrongInWords(error, 'picture') }),
  );
});

function tell(told: SolveTold): void {
  postMessage(told);
}
