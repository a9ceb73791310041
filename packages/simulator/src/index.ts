import { HalfhitchKnot } from './elements/knot-element.js';
import { HalfhitchLesson } from './elements/lesson-element.js';
import { HalfhitchPicture } from './elements/picture-element.js';
import { HalfhitchPiece } from './elements/piece-element.js';
import { HalfhitchRow } from './elements/row-element.js';

import type { Messages } from './messages/catalogue.js';
import type { LessonKey } from './messages/lessons-english.js';

export { HalfhitchKnot } from './elements/knot-element.js';
export { type AnswerDetail, HalfhitchLesson } from './elements/lesson-element.js';
export { HalfhitchPicture } from './elements/picture-element.js';
export { HalfhitchPiece } from './elements/piece-element.js';
export { HalfhitchRow } from './elements/row-element.js';
export type { StageElement } from './elements/stage-element.js';
export { MESSAGES } from './messages/words.js';
export { patternFromText, planFromText } from './plan-from-text.js';
export type { StageView } from './stage/camera-turn.js';
export type { StageControls } from './stage/controls.js';
export type { StepDetail, TiedDetail } from './stage/news.js';

/**
 * The messages of the lessons, for pages that add a language to them and have no bundler to reach
 * `@halfhitch/simulator/lessons`. They are loaded when this is first called.
 */
export async function lessonMessages(): Promise<Messages<LessonKey>> {
  return (await import('./lessons.js')).LESSON_MESSAGES;
}

const ELEMENTS = {
  'halfhitch-knot': HalfhitchKnot,
  'halfhitch-lesson': HalfhitchLesson,
  'halfhitch-picture': HalfhitchPicture,
  'halfhitch-piece': HalfhitchPiece,
  'halfhitch-row': HalfhitchRow,
};

for (const [name, element] of Object.entries(ELEMENTS)) {
  // A page may load two copies; the first one keeps the names.
  if (!customElements.get(name)) customElements.define(name, element);
}

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-knot': HalfhitchKnot;
    'halfhitch-lesson': HalfhitchLesson;
    'halfhitch-picture': HalfhitchPicture;
    'halfhitch-piece': HalfhitchPiece;
    'halfhitch-row': HalfhitchRow;
  }
}
