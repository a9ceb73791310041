import { KNOT_KINDS, type KnotKind, mirrorKnot } from '@halfhitch/core';
import { css, type PropertyDeclarations, type PropertyValues } from 'lit';
import { KNOT_SCORE } from '../knot/knot-score.js';
import {
  halfInWords,
  type KnotNames,
  knotWords,
  plainNames,
  undoingWords,
} from '../knot/knot-words.js';
import type { StageMoment, StageWords } from '../stage/moment.js';
import type { TiedDetail } from '../stage/news.js';
import { stageStyles } from '../stage/styles.js';
import { COLOUR } from './attribute-warnings.js';
import { StageElement } from './stage-element.js';

/**
 * `<halfhitch-knot>`: one knot being tied, half hitch by half hitch.
 *
 * @attr kind - forward, backward, forward-backward or backward-forward
 * @attr position - 0 to 2, a half hitch from 0 to 1 and the other from 1 to 2
 * @attr tying-colour - `#rrggbb`
 * @attr held-colour - `#rrggbb`
 * @attr tying-name - what the tying string is called in the words
 * @attr held-name - what the held string is called in the words
 */
export class HalfhitchKnot extends StageElement {
  static override styles = [
    stageStyles,
    // The moves of a half hitch alone are fewer than those of a row's knot.
    css`
      @container (inline-size >= 40em) {
        .caption {
          min-block-size: 9em;
        }
      }
      @container (inline-size >= 60em) {
        .caption:not(.short) {
          min-block-size: 7em;
        }
      }
    `,
  ];

  static override properties: PropertyDeclarations = {
    kind: { reflect: true, noAccessor: true },
    tyingColour: { attribute: 'tying-colour', reflect: true },
    heldColour: { attribute: 'held-colour', reflect: true },
    tyingName: { attribute: 'tying-name', reflect: true },
    heldName: { attribute: 'held-name', reflect: true },
  };

  private kindAsked: KnotKind = 'forward';
  declare tyingColour: string;
  declare heldColour: string;
  declare tyingName: string;
  declare heldName: string;

  constructor() {
    super();
    this.tyingColour = '#2f6f9f';
    this.heldColour = '#e9e2d0';
    this.tyingName = '';
    this.heldName = '';
    this.score(KNOT_SCORE, 0);
  }

  get kind(): KnotKind {
    return this.kindAsked;
  }
  /** Another kind is shown from its beginning; a word that is no kind means forward. */
  set kind(kind: KnotKind) {
    this.warnings.oneOf('kind', kind, KNOT_KINDS);
    const before = this.kindAsked;
    this.kindAsked = KNOT_KINDS.includes(kind) ? kind : 'forward';
    if (this.kindAsked === before) return;
    this.pause();
    this.seek(0);
    this.requestUpdate('kind', before);
  }

  protected override willUpdate(changes: PropertyValues<this>): void {
    super.willUpdate(changes);
    if (changes.has('tyingColour')) this.warnings.colour('tying-colour', this.tyingColour);
    if (changes.has('heldColour')) this.warnings.colour('held-colour', this.heldColour);
  }

  protected override async loadPoses(): Promise<void> {
    this.poses ??= await import('../knot/knot-lines.js');
  }
  private poses: typeof import('../knot/knot-lines.js') | null = null;

  protected override momentAt(position: number): StageMoment | null {
    if (this.poses === null) return null;
    const { crossingOf, knotBox, knotLines } = this.poses;
    const { kind, mirror, tyingColour, heldColour } = this;
    const lines = knotLines(
      { kind, mirror, tyingColour: hex(tyingColour), heldColour: hex(heldColour) },
      position,
    );
    return { lines, box: knotBox(position), crossing: crossingOf(lines) };
  }

  protected override knotsDoneAt(position: number): number {
    return position >= 2 ? 1 : 0;
  }

  protected override tiedAs(): { readonly detail: TiedDetail; readonly endsRow: boolean } {
    return { detail: { row: 0, knot: 0 }, endsRow: false };
  }

  protected override wordsAt(position: number): StageWords {
    const { words: say, names, kindTied } = this;
    if (this.backward) {
      const words = undoingWords(kindTied, position, names, say);
      return { ...words, saidPlaying: words.said };
    }
    const words = knotWords(kindTied, position, names, say);
    const half = position > 1 ? 1 : 0;
    return { ...words, saidPlaying: halfInWords(kindTied, half, names, say) };
  }

  protected override get pictureName(): string {
    const { words, names } = this;
    const kind = words(`kind.${this.kindTied}`);
    const heldAt = names.heldAt ?? names.held;
    const picture =
      this.heldName === ''
        ? words('knot.picture', { kind })
        : words('knot.pictureOn', { kind, heldAt });
    return this.mirror ? words('picture.mirrored', { picture }) : picture;
  }

  protected override get stepName(): string {
    return this.words('step.half');
  }

  /** The knot that is seen: the mirror image of `kind` when it is mirrored. */
  private get kindTied(): KnotKind {
    return this.mirror ? mirrorKnot(this.kind) : this.kind;
  }

  private get names(): KnotNames {
    return plainNames(this.words, this.tyingName, this.heldName);
  }
}

/** Anything that is no colour would upset the drawing, so it becomes grey. */
function hex(colour: string): string {
  return COLOUR.test(colour) ? colour : '#8a8f94';
}
