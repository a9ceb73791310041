import { type KnotReading, mirrorKnot } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';

/** What is played. */
export type Playing = 'knot' | 'row';

export interface WatchWish {
  readonly playing: Playing;
  /** The chosen knot; null before it is known. */
  readonly knot: KnotReading | null;
  readonly mirror: boolean;
  choosePlaying(playing: Playing): void;
  setMirror(mirror: boolean): void;
  /** A row that is played has come to another step. */
  onRowStep(event: Event): void;
  lesson(): void;
}

/** A knot or its whole row, tied in front of one's eyes. */
export function watchCard(wish: WatchWish): TemplateResult {
  const { mirror } = wish;
  return html`<section class="card watch" aria-labelledby="watch-name">
    <div class="bar">
      <h2 id="watch-name">Watch it tied</h2>
      <fieldset class="switch">
        <legend class="unseen">What is played</legend>
        ${playingChoice('knot', 'One knot', wish)} ${playingChoice('row', 'Whole row', wish)}
      </fieldset>
    </div>
    ${stage(wish)}
    <label class="check">
      <input
        type="checkbox"
        .checked=${mirror}
        @change=${(event: Event) => wish.setMirror((event.target as HTMLInputElement).checked)}
      />
      Left-handed: mirror the 3D picture
    </label>
    ${mirror ? mirrored() : nothing}
    <button type="button" class="small" @click=${() => wish.lesson()}>
      Show me this one as a lesson
    </button>
  </section>`;
}

/** "Row 3, column 5: forward knot, lake blue" */
function knotName(knot: KnotReading): string {
  const colour = knot.tying.name === '' ? knot.tying.colour : knot.tying.name;
  return `Row ${knot.row + 1}, column ${knot.column + 1}: ${knot.kind} knot, ${colour}`;
}

function playingChoice(value: Playing, name: string, wish: WatchWish): TemplateResult {
  return html`<label>
    <input
      type="radio"
      name="playing"
      value=${value}
      .checked=${wish.playing === value}
      @change=${() => wish.choosePlaying(value)}
    />
    <span>${name}</span>
  </label>`;
}

function stage({ playing, knot, mirror, onRowStep }: WatchWish): TemplateResult {
  if (playing === 'row') {
    return html`<halfhitch-row ?mirror=${mirror} @halfhitch-step=${onRowStep}></halfhitch-row>`;
  }
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
function mirrored(): TemplateResult {
  return html`<p class="hand" role="status">
    <strong>Shown for the left hand: mirror image.</strong> The chart, its picture and the written
    rows stay as drawn. Worked in the mirror throughout, left and right change places in every
    row, and the piece comes out as the mirror image of the drawing: draw letters and numbers the
    wrong way round for that.
  </p>`;
}
