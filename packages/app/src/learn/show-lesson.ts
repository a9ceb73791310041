/**
 * How other views open a lesson about one place of the chart. Small, and needs nothing: a view that
 * only offers "show me this one" loads no lesson.
 *
 * A view calls `showLesson(this, { row, column })`. lesson-requests.ts hears it, wherever it comes
 * from, and opens the view of the lessons there.
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
