import type { Count } from './count.js';
import type { KnottingChoice } from './effort.js';
import type { CellEdit, SuggestionKind } from './suggestion.js';

/** A change that seems worth proving, and what it seems to gain. */
export interface Idea {
  readonly kind: SuggestionKind;
  readonly edits: readonly CellEdit[];
  readonly choice: KnottingChoice;
  readonly ofShape: boolean;
  readonly gain: Count;
}
