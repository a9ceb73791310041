export { diagonalInstructionsHtml } from './html.js';
export { instructDiagonalRow } from './instruct-row.js';
export { closingDiagonalSection, openingDiagonalSections } from './opening.js';
export * from './parts.js';
export { diagonalStepInWords } from './step-words.js';
export {
  countKinds,
  type DiagonalFindingToTell,
  type DiagonalVerdict,
  diagonalFindingInWords,
  diagonalSummaryInWords,
  type KindCounts,
  kindsInWords,
} from './summary.js';
export { diagonalInstructionsText } from './text.js';
export { kindInFull, orderInWords, slotRangeInWords, slotsInWords } from './wording.js';
