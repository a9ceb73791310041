/**
 * How other views open a lesson about one place of the chart. Small, and needs nothing: a view that
 * only offers "show me this one" loads no lesson.
 *
 * A view calls `showLesson(this, { row, column })`. The event bubbles up to the shell, which opens
 * the tab of the lessons and hands the place on:
 *
 * ```ts
 * this.addEventListener(SHOW_LESSON, (event) => {
 *   openTab('learn');
 *   learnElement.place = event.detail; // <halfhitch-learn>; may be set before it is upgraded
 * });
 * ```
 */

/** A knot of the open chart: its row and column, each from 0. */
export interface LessonPlace {
  readonly row: number;
  readonly column: number;
}

/** Name of the event; its detail is a place. */
export const SHOW_LESSON = 'show-lesson';

declare global {
  interface HTMLElementEventMap {
    'show-lesson': CustomEvent<LessonPlace>;
  }
}

/** Asks whoever listens above `from` for the lesson about a knot of the open chart. */
export function showLesson(from: EventTarget, { row, column }: LessonPlace): void {
  from.dispatchEvent(
    new CustomEvent<LessonPlace>(SHOW_LESSON, { detail: { row, column }, bubbles: true }),
  );
}
