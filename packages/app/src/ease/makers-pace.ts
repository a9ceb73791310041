import type { Pace } from '@halfhitch/core';
import type { Session } from '../project/session.js';
import { keeperOf } from '../store/keep-session.js';
import { paceOf } from '../tie/pace.js';
import { PACE_LIMITS } from './pace.js';

/** The pace at which the open project has been tied so far; null where too little was timed. */
export async function makersPace(session: Session): Promise<Pace | null> {
  const { project } = session;
  const keeper = keeperOf(session);
  if (project === null || keeper === null) return null;
  try {
    const progress = await (await keeper).store.progress(project.id);
    const pace = progress === null ? null : paceOf(progress.times);
    return pace === null ? null : withinLimits(pace);
  } catch {
    // What cannot be read of a pace is no loss: it can be filled in.
    return null;
  }
}

/** In tenths of a second, as a field takes it. */
export function withinLimits({ halfHitch, change }: Pace): Pace {
  const figure = (name: keyof Pace, value: number): number => {
    const { least, most } = PACE_LIMITS[name];
    return Math.min(most, Math.max(least, Math.round(value * 10) / 10));
  };
  return { halfHitch: figure('halfHitch', halfHitch), change: figure('change', change) };
}
