/** Lessons without a browser: their pages, questions and answers. Nothing here needs a DOM. */
export type {
  Answer,
  Choice,
  FabricShow,
  KnotShow,
  LatticeShow,
  Lesson,
  LessonPage,
  PieceShow,
  Question,
  RowShow,
  Show,
} from './lessons/lesson.js';
export {
  caseOf,
  isLessonName,
  type LessonOptions,
  lessonFor,
  lessonNamed,
  lessonTitle,
  MOST_STEPS_TAUGHT,
} from './lessons/lesson-for.js';
export {
  LESSON_GROUPS,
  type ListedGroup,
  type ListedLesson,
  lessonList,
} from './lessons/lesson-list.js';
export { LESSON_NAMES, type LessonName } from './lessons/lessons.js';
export type { Hand } from './lessons/work.js';
export { LESSON_MESSAGES } from './messages/lesson-words.js';
