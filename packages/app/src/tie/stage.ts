import type { HalfhitchKnot } from '@halfhitch/simulator';
import { html, nothing, type TemplateResult } from 'lit';
import type { InHand } from './in-hand.js';
import type { TieSettings } from './settings.js';

/** What an animation of a knot can be told. */
export interface Stage {
  readonly updateComplete: Promise<unknown>;
  play(): void;
  pause(): void;
}

/** A larger picture than that of the knot alone. */
export interface LargerPicture {
  readonly label: string;
  readonly picture: TemplateResult;
}

/** The knot in hand, pictured as the maker wants it. */
export function stageCard(
  hand: InHand | null,
  { picture }: TieSettings,
  larger: LargerPicture,
  choose: (picture: TieSettings['picture']) => void,
): TemplateResult {
  const choice = (value: TieSettings['picture'], name: string): TemplateResult => html`<label>
    <input
      type="radio"
      name="tie-picture"
      value=${value}
      .checked=${picture === value}
      @change=${() => choose(value)}
    />
    <span>${name}</span>
  </label>`;
  return html`
    ${picture === 'row' ? larger.picture : nothing}
    ${picture === 'knot' && hand !== null ? aloneStage(hand) : nothing}
    <fieldset class="switch">
      <legend class="unseen">Picture</legend>
      ${choice('row', larger.label)} ${choice('knot', 'Alone')} ${choice('none', 'None')}
    </fieldset>
  `;
}

function aloneStage({ knot, names }: InHand): TemplateResult {
  return html`<halfhitch-knot
    controls="few"
    .kind=${knot.kind}
    .tyingColour=${knot.tying.colour}
    .heldColour=${knot.held.colour}
    .tyingName=${names.tying}
    .heldName=${names.held}
  ><span slot="caption"></span></halfhitch-knot>`;
}

/** The picture of the knot alone, once it is in the page. */
export function knotAlone(page: Element): HalfhitchKnot | null {
  return page.querySelector('halfhitch-knot');
}

/** Puts each knot that comes up on the stage, and plays it where that is wanted. */
export class Staging {
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');
  private staged: string | null = null;

  clear(): void {
    this.staged = null;
  }

  /**
   * @param showing tells the knots and pictures apart
   * @param again whether to put it there although it is the same
   * @param put puts it there; null while there is no stage in the page
   * @param wanted whether it is to be played, asked when it can be
   */
  show(showing: string, again: boolean, put: () => Stage | null, wanted: () => boolean): void {
    if (this.staged === showing && !again) return;
    const stage = put();
    if (stage === null) return;
    this.staged = showing;
    void this.play(stage, wanted);
  }

  private async play(stage: Stage, wanted: () => boolean): Promise<void> {
    // Once its new kind has reached the element.
    await stage.updateComplete;
    if (isKnot(stage)) stage.seek(0);
    if (wanted() && !this.calm.matches) stage.play();
    else stage.pause();
  }
}

function isKnot(stage: Stage): stage is HalfhitchKnot {
  return stage instanceof Element && stage.localName === 'halfhitch-knot';
}
