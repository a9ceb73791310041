import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Session } from '../project/session.js';
import { SessionWatch } from '../view/session-watch.js';
import type { Piece } from '../work/messages.js';
import { cutForm } from './cut-form.js';
import { cutInShort, cutResults } from './cut-results.js';
import { CutDesk } from './desk.js';
import type { CutErrors } from './read-settings.js';
import { type CutSettings, keptSettings, USUAL_SETTINGS } from './settings.js';
import type { CutSheet } from './sheet.js';

/** Long enough for the next letter to come, ms. */
const PAUSE_IN_TYPING = 300;

/** A larger piece takes seconds, so it is worked out only when it is asked for. */
const MOST_UNASKED = 400_000;

/** How much thread to cut for the open piece. */
export class CutPanel extends LitElement {
  static override properties = {
    session: { attribute: false },
    piece: { state: true },
    settings: { state: true },
    errors: { state: true },
    sheet: { state: true },
    busy: { state: true },
    unasked: { state: true },
    news: { state: true },
  };

  declare session: Session | null;
  declare private piece: Piece | null;
  declare private settings: CutSettings;
  declare private errors: CutErrors;
  /** The last list that came out, and what was filled in for it. */
  declare private sheet: { readonly list: CutSheet; readonly from: CutSettings } | null;
  declare private busy: boolean;
  /** Whether the piece is so large that the list waits to be asked for. */
  declare private unasked: boolean;
  declare private news: string;

  private readonly desk = new CutDesk();
  private timer = 0;

  constructor() {
    super();
    this.session = null;
    this.piece = null;
    this.settings = keptSettings();
    this.errors = {};
    this.sheet = null;
    this.busy = false;
    this.unasked = false;
    this.news = '';
    new SessionWatch(this, ['project', 'piece']);
  }

  /** In the page itself, as all of it is. */
  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
  }

  protected override willUpdate(changes: PropertyValues): void {
    const { project, piece } = this.session ?? { project: null, piece: null };
    this.piece = piece;
    const settings = project?.cut ?? this.settings;
    // Also by undoing, when nobody typed.
    const refilled = settings !== this.settings;
    this.settings = settings;
    if (refilled && !changes.has('piece')) this.later(PAUSE_IN_TYPING);
    if (!changes.has('piece')) return;
    const before = changes.get('piece') as Piece | null | undefined;
    // Another chart's lengths would only mislead; those of the same chart are about right.
    if (before?.chart !== this.piece?.chart) {
      this.sheet = null;
      this.errors = {};
      this.news = '';
    }
    this.later(0);
  }

  /** What is wrong must be in sight. */
  protected override updated(changes: PropertyValues): void {
    if (!changes.has('errors')) return;
    for (const fold of this.querySelectorAll<HTMLDetailsElement>('details[data-wrong]')) {
      fold.open = true;
    }
  }

  private readonly fill = (change: Partial<CutSettings>): void => {
    this.set({ ...this.settings, ...change });
    this.later(PAUSE_IN_TYPING);
  };

  private readonly reset = (): void => {
    this.set(USUAL_SETTINGS);
    this.later(0);
  };

  private set(settings: CutSettings): void {
    this.settings = settings;
    this.session?.edit({ cut: settings }, 'Change what the cut list counts on');
  }

  private later(wait: number): void {
    clearTimeout(this.timer);
    const { piece } = this;
    this.unasked = piece !== null && piece.rows * piece.columns > MOST_UNASKED;
    this.busy = piece !== null && !this.unasked;
    if (!this.busy) return;
    this.timer = window.setTimeout(() => void this.workOut(), wait);
  }

  private async workOut(): Promise<void> {
    const { piece, settings } = this;
    if (piece === null) return;
    this.unasked = false;
    this.busy = true;
    const { chart, choice } = piece;
    const outcome = await this.desk.ask({ chart, choice, settings });
    if (outcome === null || piece !== this.piece || settings !== this.settings) return;
    this.busy = false;
    if ('errors' in outcome) {
      this.errors = outcome.errors;
      this.news = '';
    } else {
      this.errors = {};
      this.sheet = { list: outcome.sheet, from: settings };
      this.news = cutInShort(outcome.sheet);
    }
  }

  protected override render(): TemplateResult {
    const { errors, sheet, settings } = this;
    const wrong = Object.keys(errors).length > 0;
    return html`
      <div class="bar">
        <h2 id="cut-name">Cut the thread</h2>
        <button type="button" ?hidden=${sheet === null} @click=${print}>Print the cut list</button>
      </div>
      <p class="unseen" role="status">${this.news}</p>
      <div class="cut-bench">
        ${cutForm({ settings, errors, fill: this.fill, reset: this.reset })}
        <div class="cut-list" aria-busy=${this.busy ? 'true' : 'false'}>
          <p class="print-only print-title">${this.piece?.name ?? ''}</p>
          ${
            errors.whole === undefined
              ? nothing
              : html`<p class="field-error" role="alert">${errors.whole}</p>`
          }
          ${this.unasked ? this.invitation() : nothing}
          ${
            sheet === null
              ? this.nothingYet(wrong)
              : html`
                ${wrong || this.unasked ? html`<p class="note">The list below is from before this change.</p>` : nothing}
                ${this.piece?.ok === false ? html`<p class="note">This plan does not knot out as drawn; the lengths are for what it ties.</p>` : nothing}
                ${cutResults(sheet.list, sheet.from)}
              `
          }
          ${care()}
        </div>
      </div>
    `;
  }

  private invitation(): TemplateResult {
    return html`<div class="invitation">
      <p>A piece so large takes a while. It is worked out beside the page, which goes on answering.</p>
      <button type="button" @click=${() => void this.workOut()}>Work out the cut list</button>
    </div>`;
  }

  private nothingYet(wrong: boolean): TemplateResult | typeof nothing {
    if (this.unasked) return nothing;
    return html`<p>${wrong ? 'Mend what is marked, and the list is worked out.' : 'Working out the cut list.'}</p>`;
  }
}

function care(): TemplateResult {
  return html`<p class="care">
    <strong>Take care.</strong> Cut away from your fingers, on something firm, and put the blade
    away. Long threads and cut ends are nothing for small children: a cord can strangle, and an end
    can be swallowed.
  </p>`;
}

/** The list alone, without the rest of the page. */
function print(): void {
  const page = document.documentElement;
  page.dataset['print'] = 'cut';
  addEventListener('afterprint', () => delete page.dataset['print'], { once: true });
  window.print();
}

customElements.define('halfhitch-cut', CutPanel);
