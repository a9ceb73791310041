/**
 * Hears when a view asks for the lesson about a knot (`showLesson` of show-lesson.ts, or the same
 * event by hand), opens the view of the lessons and keeps the place until that has taken it. Import
 * it once, where the views are listed.
 */
import { type LessonPlace, SHOW_LESSON } from './show-lesson.js';

/** The view's name in the address. */
const ADDRESS = '#learn';

let wanted: LessonPlace | null = null;

/** The place asked for, once. */
export function takeRequest(): LessonPlace | null {
  const place = wanted;
  wanted = null;
  return place;
}

addEventListener(SHOW_LESSON, (event) => {
  wanted = (event as CustomEvent<LessonPlace>).detail;
  if (location.hash !== ADDRESS) location.hash = ADDRESS;
});
