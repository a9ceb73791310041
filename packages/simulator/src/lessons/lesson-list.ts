import { LESSON_MESSAGES } from '../messages/lesson-words.js';
import { type LessonOptions, lessonTitle } from './lesson-for.js';
import type { LessonName } from './lessons.js';

/** Lessons that belong together, in the order in which a beginner needs them. */
export const LESSON_GROUPS = {
  begin: ['four-knots', 'strings', 'undo'],
  edges: ['edge-right', 'edge-left', 'turn', 'wrapped'],
  changes: [
    'first-use',
    'change-within',
    'float',
    'change-after-first',
    'change-last',
    'change-turn',
    'every-knot',
    'run-out',
  ],
  diagonal: ['brick-row', 'working-pair', 'idle-string', 'stripe', 'chevron'],
} as const satisfies Record<string, readonly LessonName[]>;

export interface ListedLesson {
  readonly name: LessonName;
  readonly title: string;
  /** The question that the lesson answers, in the words of someone who is confused. */
  readonly asks: string;
}

export interface ListedGroup {
  readonly title: string;
  readonly lessons: readonly ListedLesson[];
}

/** All lessons with their titles and what each answers, for a table of contents. */
export function lessonList(options: LessonOptions = {}): readonly ListedGroup[] {
  const say = LESSON_MESSAGES.in(options.lang ?? 'en');
  return (Object.keys(LESSON_GROUPS) as (keyof typeof LESSON_GROUPS)[]).map((group) => ({
    title: say(`group.${group}`),
    lessons: LESSON_GROUPS[group].map((name) => ({
      name,
      title: lessonTitle(name, options),
      asks: say(`${name}.asks`),
    })),
  }));
}
