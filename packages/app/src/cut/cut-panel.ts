import { KNOT_KINDS, knotIndex } from '@halfhitch/core';
import type { WorthSwapping } from '@halfhitch/geometry';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { knottedAlike, nameOf, type Project } from '../project/project.js';
import type { Session } from '../project/session.js';
import { PageElement } from '../view/page-element.js';
import '../view/swatch.js';
import { SessionWatch } from '../view/session-watch.js';
import { care, shopping, wristSizes } from './cut-extras.js';
import { cutForm } from './cut-form.js';
import { cutInShort, cutResults } from './cut-results.js';
import { CutDesk } from './desk.js';
import type { CutAnswer, CutRequest } from './messages.js';
import type { CutErrors } from './read-settings.js';
import { type CutSettings, USUAL_SETTINGS } from './settings.js';
import { swaps } from './swaps.js';

/** Long enough for the next letter to come, ms. */
const PAUSE_IN_TYPING = 300;

/** What is typed in one go is undone in one go, ms. */
const PAUSE_TO_KEEP = 600;

/** A larger piece takes seconds, so it is worked out only when it is asked for. */
const MOST_UNASKED = 400_000;

/** How much thread to cut for the open project. */
export class CutPanel extends PageElement {
  static override properties = {
    session: { attribute: false },
    settings: { state: true },
    errors: { state: true },
    answer: { state: true },
    busy: { state: true },
    unasked: { state: true },
    news: { state: true },
    copied: { state: true },
  };

  declare session: Session | null;
  /** As they stand in the fields; a moment later in the project too. */
  declare private settings: CutSettings;
  declare private errors: CutErrors;
  /** The last list that came out, and what was filled in for it. */
  declare private answer: { readonly of: CutAnswer; readonly from: CutSettings } | null;
  declare private busy: boolean;
  /** Whether the piece is so large that the list waits to be asked for. */
  declare private unasked: boolean;
  declare private news: string;
  declare private copied: string;

  private readonly desk = new CutDesk();
  private timer = 0;
  private keeping = 0;
  /** The project that the list was last asked for, and the one whose settings are in the fields. */
  private asked: Project | null = null;
  private filledFrom: CutSettings | null = null;

  constructor() {
    super();
    this.session = null;
    this.settings = USUAL_SETTINGS;
    this.errors = {};
    this.answer = null;
    this.busy = false;
    this.unasked = false;
    this.news = '';
    this.copied = '';
    new SessionWatch(this, ['project', 'piece']);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // Before the others who hear it, so that what was typed last is kept with the rest.
    addEventListener('pagehide', this.done, { capture: true });
    addEventListener('visibilitychange', this.done, { capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('pagehide', this.done, { capture: true });
    removeEventListener('visibilitychange', this.done, { capture: true });
    clearTimeout(this.timer);
    this.keep();
    this.desk.abandon();
    this.asked = null;
  }

  private get project(): Project | null {
    return this.session?.project ?? null;
  }

  protected override willUpdate(): void {
    const { project, asked } = this;
    if (project === null || project === asked) return;
    this.asked = project;
    const other = project.id !== asked?.id;
    if (other) {
      clearTimeout(this.keeping);
      this.keeping = 0;
    }
    // Undone, opened or changed in another window; what is being typed here stays.
    const filled = project.cut !== this.filledFrom;
    if (filled && (other || this.keeping === 0)) this.settings = project.cut;
    this.filledFrom = project.cut;
    // Another chart's lengths would only mislead; those of the same chart are about right.
    if (other || asked === null || !sameDrawing(project, asked)) {
      this.answer = null;
      this.errors = {};
      this.news = '';
    }
    const same = !other && asked !== null && knottedAlike(project, asked);
    if (!same || filled) this.later(0);
  }

  /** What is wrong must be in sight. */
  protected override updated(changes: PropertyValues): void {
    if (!changes.has('errors')) return;
    for (const fold of this.querySelectorAll<HTMLDetailsElement>('details[data-wrong]')) {
      fold.open = true;
    }
  }

  private readonly fill = (change: Partial<CutSettings>): void => {
    this.settings = { ...this.settings, ...change };
    this.later(PAUSE_IN_TYPING);
    clearTimeout(this.keeping);
    this.keeping = window.setTimeout(() => this.keep(), PAUSE_TO_KEEP);
  };

  private readonly done = (): void => {
    this.keep();
  };

  private readonly reset = (): void => {
    this.settings = USUAL_SETTINGS;
    this.later(0);
    this.keep(true);
  };

  private readonly takeWrist = (wrist: number): void => {
    this.settings = { ...this.settings, span: 'wrist', wrist: String(wrist) };
    this.later(0);
    this.keep(true);
  };

  /** Puts what is in the fields into the project, where it can be undone. */
  private keep(now = false): void {
    if (this.keeping === 0 && !now) return;
    clearTimeout(this.keeping);
    this.keeping = 0;
    const { settings } = this;
    if (this.project === null || settings === this.project.cut) return;
    this.filledFrom = settings;
    this.session?.replace({ ...this.project, cut: settings }, 'Change the cut settings');
  }

  private later(wait: number): void {
    clearTimeout(this.timer);
    const { project } = this;
    this.copied = '';
    this.unasked = project !== null && sizeOf(project) > MOST_UNASKED;
    this.busy = project !== null && !this.unasked;
    if (!this.busy) return;
    this.timer = window.setTimeout(() => void this.workOut(), wait);
  }

  private async workOut(): Promise<void> {
    const { project, settings } = this;
    if (project === null) return;
    this.unasked = false;
    this.busy = true;
    const outcome = await this.desk.ask(requestOf(project, settings));
    const now = this.project;
    if (outcome === null || settings !== this.settings) return;
    if (now === null || !knottedAlike(project, now)) return;
    this.busy = false;
    if ('errors' in outcome) {
      this.errors = outcome.errors;
      this.news = '';
    } else {
      this.errors = {};
      this.answer = { of: outcome, from: settings };
      this.news = cutInShort(outcome.sheet);
    }
  }

  private readonly copy = (text: string): void => {
    const done = (copied: string): void => {
      this.copied = copied;
    };
    // Left out by old browsers, and refused where the page may not write to the clipboard.
    const written = navigator.clipboard?.writeText(text) ?? Promise.reject(new Error('none'));
    written.then(
      () => done('Copied.'),
      () => done('This browser does not let a page copy. Select the lines above and copy them.'),
    );
  };

  protected override render(): TemplateResult {
    const { errors, answer, settings, project } = this;
    const wrong = Object.keys(errors).length > 0;
    const piece = this.session?.piece ?? null;
    const notAsDrawn =
      piece !== null && project?.kind === 'alpha' && piece.chart === project.chart && !piece.ok;
    const name = project === null ? '' : nameOf(project);
    return html`
      <div class="bar">
        <h2 id="cut-name">Cut the thread</h2>
        <button type="button" ?hidden=${answer === null} @click=${print}>Print the cut list</button>
      </div>
      <p class="unseen" role="status">${this.news}</p>
      <div class="cut-bench">
        ${cutForm({
          kind: project?.kind ?? 'alpha',
          settings,
          errors,
          fill: this.fill,
          done: this.done,
          reset: this.reset,
        })}
        <div class="cut-list" aria-busy=${this.busy ? 'true' : 'false'}>
          <p class="print-only print-title">${name}</p>
          ${
            errors.whole === undefined
              ? nothing
              : html`<p class="field-error" role="alert">${errors.whole}</p>`
          }
          ${this.unasked ? this.invitation() : nothing}
          ${
            answer === null
              ? this.nothingYet(wrong)
              : html`
                ${wrong || this.unasked ? html`<p class="note">The list below is from before this change.</p>` : nothing}
                ${notAsDrawn ? html`<p class="note">This plan does not knot out as drawn; the lengths are for what it ties.</p>` : nothing}
                ${cutResults(answer.of, answer.from)}
                ${swaps(answer.of.sheet, (swap) => this.swap(swap))}
                ${shopping({ answer: answer.of, name, copied: this.copied, copy: this.copy })}
                ${wristSizes(answer.of, this.takeWrist)}
              `
          }
          ${care()}
        </div>
      </div>
    `;
  }

  /** Has two strings of one colour go on in each other's place. */
  private swap({ row, place, instead }: WorthSwapping): void {
    const pattern = this.session?.diagonal?.pattern;
    if (pattern === undefined || row >= pattern.rows) return;
    const knots = pattern.knots.slice();
    knots[knotIndex(pattern, row, place)] = KNOT_KINDS.indexOf(instead);
    this.session?.editDiagonal({ pattern: { ...pattern, knots } }, 'Swap two strings');
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

function requestOf(project: Project, settings: CutSettings): CutRequest {
  if (project.kind === 'diagonal') return { pattern: project.pattern, settings };
  const { chart, choice } = project;
  return { chart, choice, settings };
}

function sameDrawing(one: Project, other: Project): boolean {
  if (one.kind === 'alpha') return other.kind === 'alpha' && one.chart === other.chart;
  return other.kind === 'diagonal' && one.pattern === other.pattern;
}

/** Knots that there may be. */
function sizeOf(project: Project): number {
  return project.kind === 'alpha' ? project.chart.cells.length : project.pattern.knots.length;
}

/** The list alone, without the rest of the page. */
function print(): void {
  const page = document.documentElement;
  page.dataset['print'] = 'cut';
  addEventListener('afterprint', () => delete page.dataset['print'], { once: true });
  window.print();
}

customElements.define('halfhitch-cut', CutPanel);
