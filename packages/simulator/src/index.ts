import { HalfhitchKnot } from './elements/knot-element.js';
import { HalfhitchRow } from './elements/row-element.js';

export { HalfhitchKnot } from './elements/knot-element.js';
export { HalfhitchRow } from './elements/row-element.js';
export type { StageElement, StageView, StepDetail } from './elements/stage-element.js';

// A page may load two copies; the first one keeps the names.
if (!customElements.get('halfhitch-knot')) customElements.define('halfhitch-knot', HalfhitchKnot);
if (!customElements.get('halfhitch-row')) customElements.define('halfhitch-row', HalfhitchRow);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-knot': HalfhitchKnot;
    'halfhitch-row': HalfhitchRow;
  }
}
