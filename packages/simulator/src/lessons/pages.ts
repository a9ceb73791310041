import type { Values } from '../messages/catalogue.js';
import type { LessonKey } from '../messages/lessons-english.js';
import type { LessonPage, Question, Show } from './lesson.js';
import type { Teaching } from './work.js';

/** A page of words and pictures. */
export function page(
  { say }: Teaching,
  key: LessonKey,
  shows: readonly Show[],
  values: Values = {},
): LessonPage {
  return { text: say(key, values).split('\n'), shows, question: null };
}

/** A page that only asks. */
export function question(asked: Question): LessonPage {
  return { text: [], shows: [], question: asked };
}
