import { Messages, type Say } from './catalogue.js';
import { LESSONS_ENGLISH, type LessonKey } from './lessons-english.js';
import { LESSONS_GERMAN } from './lessons-german.js';

/** All that the lessons say. `LESSON_MESSAGES.add` takes more languages. */
export const LESSON_MESSAGES = new Messages<LessonKey>(LESSONS_ENGLISH);
LESSON_MESSAGES.add('de', LESSONS_GERMAN);

export type LessonWords = Say<LessonKey>;
