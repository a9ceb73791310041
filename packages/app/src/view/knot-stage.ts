import { type KnotReading, mirrorKnot } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';

/** The chosen knot by itself. @param knot null before it is known */
export function knotStage(knot: KnotReading | null, mirror: boolean): TemplateResult {
  if (knot === null) return html`<p>No knot here.</p>`;
  return html`
    <p class="which">
      ${knotName(knot)}${mirror ? `; mirrored: ${mirrorKnot(knot.kind)}` : nothing}
    </p>
    <halfhitch-knot
      ?mirror=${mirror}
      .kind=${knot.kind}
      .tyingColour=${knot.tying.colour}
      .heldColour=${knot.held.colour}
      .tyingName=${`lead ${knot.tying.id}`}
      .heldName=${`base string ${knot.column + 1}`}
    ></halfhitch-knot>
  `;
}

/** The picture and the rows stay as they are: mirrored, they would no longer be the drawing. */
export function mirrored(): TemplateResult {
  return html`<p class="hand" role="status">
    <strong>Shown for the left hand: mirror image.</strong> The chart, its picture and the written
    rows stay as drawn. Worked in the mirror throughout, left and right change places in every
    row, and the piece comes out as the mirror image of the drawing: draw letters and numbers the
    wrong way round for that.
  </p>`;
}

/** "Row 3, column 5: forward knot, lake blue" */
function knotName(knot: KnotReading): string {
  const colour = knot.tying.name === '' ? knot.tying.colour : knot.tying.name;
  return `Row ${knot.row + 1}, column ${knot.column + 1}: ${knot.kind} knot, ${colour}`;
}
