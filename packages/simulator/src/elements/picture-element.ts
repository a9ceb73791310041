import type { DiagonalPattern, KnotKind } from '@halfhitch/core';
import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import { languageOf } from '../messages/catalogue.js';
import { AttributeWarnings } from './attribute-warnings.js';

/**
 * `<halfhitch-picture>`: a small still of a knot, or of a diagonal `pattern` of up to 600 knots,
 * drawn flat, without WebGL. A picture that a server has put into it is kept until an attribute
 * changes.
 *
 * @attr kind - forward, backward, forward-backward or backward-forward
 * @attr moment - of a knot 0 to 2, a half hitch each; 2 is the finished knot
 * @attr view - front or back
 * @attr mirror - the mirror image, as a left-handed maker ties it
 * @attr tying-colour - `#rrggbb`
 * @attr held-colour - `#rrggbb`
 * @attr label - what a screen reader calls it
 * @attr lang - en, de, or a language added to MESSAGES
 * @attr decorative - without words, where the page says them beside it
 * @slot - a picture made beforehand
 * @csspart picture - the drawing
 */
export class HalfhitchPicture extends LitElement {
  static override styles = css`
    :host {
      display: inline-block;
      inline-size: 15rem;
      max-inline-size: 100%;
    }
    :host([hidden]) {
      display: none;
    }
    .picture,
    .picture > svg,
    ::slotted(svg) {
      display: block;
      inline-size: 100%;
      block-size: auto;
    }
  `;

  static override properties: PropertyDeclarations = {
    kind: { reflect: true },
    pattern: { attribute: false },
    moment: { type: Number, reflect: true },
    view: { reflect: true },
    mirror: { type: Boolean, reflect: true },
    tyingColour: { attribute: 'tying-colour', reflect: true },
    heldColour: { attribute: 'held-colour', reflect: true },
    label: { reflect: true },
    decorative: { type: Boolean, reflect: true },
    lang: { reflect: true },
    markup: { state: true },
  };

  declare kind: KnotKind;
  /** Shown in the place of a knot. */
  declare pattern: DiagonalPattern | null;
  declare moment: number;
  declare view: 'front' | 'back';
  declare mirror: boolean;
  declare tyingColour: string | null;
  declare heldColour: string | null;
  declare label: string | null;
  declare decorative: boolean;
  declare protected markup: string;
  private readonly warnings = new AttributeWarnings(this);
  /** What the picture was last made from. */
  private drawn = '';
  private drawnPattern: DiagonalPattern | null = null;

  constructor() {
    super();
    this.kind = 'forward';
    this.pattern = null;
    this.moment = 2;
    this.view = 'front';
    this.mirror = false;
    this.tyingColour = null;
    this.heldColour = null;
    this.label = null;
    this.decorative = false;
    this.markup = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.warnings.spelling();
  }

  protected override willUpdate(changes: PropertyValues<this>): void {
    if (changes.has('view')) this.warnings.oneOf('view', this.view, ['front', 'back']);
    if (changes.has('tyingColour')) this.warnings.colour('tying-colour', this.tyingColour);
    if (changes.has('heldColour')) this.warnings.colour('held-colour', this.heldColour);
  }

  protected override render(): TemplateResult {
    return this.markup === ''
      ? html`<slot></slot>`
      : // Made by knotPicture or patternPicture, which escape every word in it.
        html`<div class="picture" part="picture">${unsafeHTML(this.markup)}</div>${nothing}`;
  }

  protected override updated(): void {
    const asked = JSON.stringify(this.asked);
    if (asked === this.drawn && this.pattern === this.drawnPattern) return;
    const first = this.drawn === '' && this.pattern === null;
    this.drawn = asked;
    this.drawnPattern = this.pattern;
    if (first && this.querySelector('svg') !== null) return;
    void this.draw(asked);
  }

  private get asked() {
    const { kind, moment, view, mirror, decorative, tyingColour, heldColour, label } = this;
    return {
      kind,
      moment,
      view,
      mirror,
      decorative,
      lang: languageOf(this),
      ...(tyingColour === null ? {} : { tyingColour }),
      ...(heldColour === null ? {} : { heldColour }),
      ...(label === null ? {} : { label }),
    };
  }

  /** Loads what draws it, which is large: a page may hold pictures that are never seen. */
  private async draw(asked: string): Promise<void> {
    const { pattern } = this;
    const { knotPicture, PictureError } = await import('../picture/knot-picture.js');
    const patterns = pattern === null ? null : await import('../picture/pattern-picture.js');
    if (asked !== this.drawn || pattern !== this.drawnPattern) return;
    try {
      this.markup =
        pattern === null || patterns === null
          ? knotPicture(this.asked)
          : patterns.patternPicture(pattern, this.asked);
    } catch (error) {
      if (!(error instanceof PictureError)) throw error;
      this.warnings.warn(error.message);
      this.markup = '';
    }
  }
}
