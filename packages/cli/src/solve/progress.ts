import type { SolveProgress } from '@halfhitch/core/solve';

const STAGES: Readonly<Record<SolveProgress['stage'], string>> = {
  reading: 'Reading the picture',
  searching: 'Looking for a way to knot it',
  explaining: 'There is none; looking for the reason',
  nearing: 'Looking for the nearest',
  tidying: 'Making it pleasanter to tie',
};

/** A line on standard error that changes as the search goes on; nothing where it is no terminal. */
export function showProgress(): { tell(progress: SolveProgress): void; clear(): void } {
  const { stderr } = process;
  if (stderr.isTTY !== true) return { tell: () => {}, clear: () => {} };
  let last = 0;
  return {
    tell({ stage, share, wrong, atLeastWrong }) {
      const now = Date.now();
      if (now - last < 100) return;
      last = now;
      const done = share === null ? '' : `, ${Math.floor(100 * share)} %`;
      const best = wrong === null ? '' : `: ${wrong} knots differ, at least ${atLeastWrong} must`;
      stderr.write(`\r\u001b[K${STAGES[stage]}${done}${stage === 'nearing' ? best : ''} ...`);
    },
    clear: () => {
      if (last > 0) stderr.write('\r\u001b[K');
    },
  };
}
