import { isLessonName, type LessonName } from '@halfhitch/simulator/lessons';

/** Languages in which all of this view is written. */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

/** How a learner wants to be taught, and what they have gone through. */
export interface LearnChoices {
  readonly language: Language;
  readonly hand: 'right' | 'left';
  readonly learned: readonly LessonName[];
}

const KEPT_AS = 'halfhitch.learn';

/** Those of last time; what a browser has not kept, or kept amiss, is as usual. */
export function keptChoices(): LearnChoices {
  try {
    return choicesFrom(JSON.parse(localStorage.getItem(KEPT_AS) ?? '{}'));
  } catch {
    return choicesFrom(null);
  }
}

export function keepChoices(choices: LearnChoices): void {
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify(choices));
  } catch {
    // They hold for this visit only.
  }
}

/** Choices from whatever was kept. */
export function choicesFrom(kept: unknown): LearnChoices {
  const { language, hand, learned } = (typeof kept === 'object' && kept !== null ? kept : {}) as {
    readonly language?: unknown;
    readonly hand?: unknown;
    readonly learned?: unknown;
  };
  const names = Array.isArray(learned) ? learned : [];
  return {
    language: LANGUAGES.find((known) => known === language) ?? 'en',
    hand: hand === 'left' ? 'left' : 'right',
    learned: [
      ...new Set(names.filter((name) => typeof name === 'string' && isLessonName(name))),
    ] as LessonName[],
  };
}
