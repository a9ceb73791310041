import { Session } from 'node:inspector';

interface Coverage {
  readonly result: readonly {
    readonly url: string;
    readonly functions: readonly {
      readonly ranges: readonly { readonly count: number }[];
    }[];
  }[];
}

/**
 * How much work of the project's own code something makes: how often its functions and their blocks
 * are run, all added up, as the engine's own coverage counts them. A count of steps and no time, so a
 * busy machine changes nothing.
 */
export class WorkCounter {
  private readonly session = new Session();

  constructor() {
    this.session.connect();
    this.post('Profiler.enable');
    this.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  count(work: () => unknown): number {
    this.post('Profiler.takePreciseCoverage');
    work();
    const { result } = this.post('Profiler.takePreciseCoverage') as Coverage;
    let counted = 0;
    for (const { url, functions } of result) {
      if (!/\/packages\/[a-z]+\/src\//u.test(url)) continue;
      for (const { ranges } of functions) for (const { count } of ranges) counted += count;
    }
    return counted;
  }

  close(): void {
    this.post('Profiler.stopPreciseCoverage');
    this.session.disconnect();
  }

  /** Answered at once: the engine is in this very thread. */
  private post(method: string, params: object = {}): unknown {
    let answer: unknown;
    let failed: Error | null = null;
    this.session.post(method, params, (error, result) => {
      failed = error;
      answer = result;
    });
    if (failed !== null) throw failed;
    return answer;
  }
}
