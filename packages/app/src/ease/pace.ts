import { type Pace, USUAL_PACE } from '@halfhitch/core';

/** What a hand can do, s. */
export const PACE_LIMITS = {
  halfHitch: { least: 0.5, most: 60 },
  change: { least: 0, most: 600 },
} as const;

const KEPT_AS = 'halfhitch.pace';

/** The pace of last time; the usual one where nothing, or something else, was kept. */
export function keptPace(): Pace {
  try {
    return paceFrom(JSON.parse(localStorage.getItem(KEPT_AS) ?? '{}'));
  } catch {
    return USUAL_PACE;
  }
}

export function keepPace(pace: Pace): void {
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify(pace));
  } catch {
    // It holds for this visit only.
  }
}

export function paceFrom(kept: unknown): Pace {
  const given = (typeof kept === 'object' && kept !== null ? kept : {}) as Record<string, unknown>;
  const figure = (name: keyof Pace): number => {
    const value = Object.hasOwn(given, name) ? given[name] : undefined;
    const { least, most } = PACE_LIMITS[name];
    return typeof value === 'number' && value >= least && value <= most ? value : USUAL_PACE[name];
  };
  return { halfHitch: figure('halfHitch'), change: figure('change') };
}

/** What is written in a field, or null when it is no number within the limits. */
export function readPace(name: keyof Pace, text: string): number | null {
  const given = text.trim();
  const value = /^\d+(\.\d+)?$/.test(given) ? Number(given) : Number.NaN;
  const { least, most } = PACE_LIMITS[name];
  return value >= least && value <= most ? value : null;
}
