import {
  type BestWay,
  effortInWords,
  mirroredChart,
  type Pace,
  timeInWords,
  withCells,
} from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import type { AlphaProject } from '../project/project.js';
import type { Session } from '../project/session.js';
import { counted } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import { SessionWatch } from '../view/session-watch.js';
import { wordsUsed } from '../view/trade-words.js';
import { bestStart } from './best-start.js';
import { EaseDesk } from './desk.js';
import { makersPace } from './makers-pace.js';
import type { Advice, EaseAnswer } from './messages.js';
import { keepPace, keptPace, readPace } from './pace.js';
import { paceFields } from './pace-fields.js';
import { type SuggestionActions, suggestionList } from './suggestion-list.js';
import { doneInWords } from './way-words.js';

/** A larger piece takes seconds, so it is looked through only when it is asked for. */
const MOST_UNASKED = 150_000;

/** Long enough for the next stroke of a pencil to come, ms. */
const PAUSE = 250;

/** What of a project decides the answer. */
type Basis = Pick<AlphaProject, 'id' | 'chart' | 'choice' | 'cut'>;

/**
 * What would make the open piece easier to knot, each with what it saves, to be shown on the chart
 * and applied; and the best way to start it. Fires `place` to show something on the chart, with its
 * row and column from 0.
 */
export class EasePanel extends PageElement {
  static override properties = {
    session: { attribute: false },
    answer: { state: true },
    busy: { state: true },
    unasked: { state: true },
    problem: { state: true },
    news: { state: true },
    all: { state: true },
    mayMirror: { state: true },
    pace: { state: true },
    wrongPace: { state: true },
    mine: { state: true },
  };

  declare session: Session | null;
  declare private answer: { readonly of: EaseAnswer; readonly to: Basis } | null;
  declare private busy: boolean;
  /** Whether the piece is so large that it is looked through only when that is asked for. */
  declare private unasked: boolean;
  declare private problem: string;
  declare private news: string;
  /** Whether all suggestions are shown. */
  declare private all: boolean;
  declare private mayMirror: boolean;
  declare private pace: Pace;
  declare private wrongPace: keyof Pace | null;
  /** As the project has been tied so far; null where that is not known. */
  declare private mine: Pace | null;

  private readonly desk = new EaseDesk();
  private timer = 0;
  private asked: Basis | null = null;
  /** What was applied last, as the button that takes it back says it. */
  private applied = '';
  private returnFocus = false;

  constructor() {
    super();
    this.session = null;
    this.answer = null;
    this.busy = false;
    this.unasked = false;
    this.problem = '';
    this.news = '';
    this.all = false;
    this.mayMirror = false;
    this.pace = keptPace();
    this.wrongPace = null;
    this.mine = null;
    new SessionWatch(this, ['project']);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
    this.desk.abandon();
    this.asked = null;
  }

  private get project(): AlphaProject | null {
    return this.session?.alpha ?? null;
  }

  /** Whether what is shown is of the project as it stands. */
  private get isCurrent(): boolean {
    const { answer, project } = this;
    return (
      answer !== null && answer.to.chart === project?.chart && answer.to.choice === project.choice
    );
  }

  protected override willUpdate(): void {
    const { project, asked } = this;
    if (project === null) return;
    const { id, chart, choice, cut } = project;
    if (asked?.chart === chart && asked.choice === choice && asked.cut === cut) return;
    if (asked?.id !== id) {
      this.answer = null;
      this.news = '';
      this.applied = '';
      this.all = false;
    }
    this.asked = { id, chart, choice, cut };
    this.later(asked?.id === id ? PAUSE : 0);
  }

  private later(wait: number): void {
    clearTimeout(this.timer);
    const { asked } = this;
    if (asked === null) return;
    // What is no longer wanted could take long.
    if (this.busy) this.desk.abandon();
    this.unasked = asked.chart.cells.length > MOST_UNASKED;
    this.busy = !this.unasked;
    if (this.busy) this.timer = window.setTimeout(() => void this.look(), wait);
  }

  private async look(): Promise<void> {
    const { asked, pace, mayMirror } = this;
    if (asked === null) return;
    this.unasked = false;
    this.busy = true;
    this.problem = '';
    const { chart, choice, cut } = asked;
    const outcome = await this.desk.ask({ chart, choice, cut, pace, mayMirror });
    if (outcome === null || asked !== this.asked) return;
    this.busy = false;
    if ('problem' in outcome) {
      this.problem = outcome.problem;
      return;
    }
    this.answer = { of: outcome, to: asked };
    const { length } = outcome.advice;
    const found = length === 0 ? 'Nothing small' : counted(length, 'thing');
    this.news = outcome.ok ? `${found} found that would make it easier.` : '';
  }

  // ---- what is done ----

  private show({ suggestion }: Advice): void {
    const [first] = suggestion.cells;
    if (first === undefined) return;
    const { row, column } = first;
    const detail = { row, column, chosen: false, cells: suggestion.cells };
    this.dispatchEvent(new CustomEvent('place', { detail, bubbles: true }));
  }

  private apply({ suggestion }: Advice): void {
    const { project } = this;
    if (project === null || !this.isCurrent) return;
    const { cells, choice } = suggestion;
    if (cells.length === 0) this.edit({ choice }, `Start from the ${choice.start}`);
    else {
      const what = cells.length === 1 ? 'Recolour a knot' : `Recolour ${cells.length} knots`;
      this.edit({ chart: withCells(project.chart, cells) }, what);
    }
  }

  private readonly suggestionActions: SuggestionActions = {
    show: (advice) => {
      if (this.isCurrent) this.show(advice);
    },
    apply: (advice) => this.apply(advice),
    showAll: () => {
      this.all = true;
    },
  };

  private start(way: BestWay): void {
    const { project } = this;
    if (project === null || !this.isCurrent) return;
    const { mirroring, start } = way.best;
    const what = doneInWords(way);
    const choice = { edge: way.edge, start };
    this.edit(
      mirroring === 'as-drawn'
        ? { choice }
        : { choice, chart: mirroredChart(project.chart, mirroring) },
      what,
    );
  }

  private edit(change: Parameters<Session['edit']>[0], what: string): void {
    this.session?.edit(change, what);
    this.applied = what;
    this.returnFocus = true;
    this.requestUpdate();
  }

  private setMirror(mayMirror: boolean): void {
    this.mayMirror = mayMirror;
    this.later(0);
  }

  private setPace(name: keyof Pace, text: string): void {
    const value = readPace(name, text);
    this.wrongPace = value === null ? name : this.wrongPace === name ? null : this.wrongPace;
    if (value !== null) this.takePace({ ...this.pace, [name]: value });
  }

  private takePace(pace: Pace): void {
    this.pace = pace;
    keepPace(pace);
    this.later(PAUSE);
  }

  private async lookForMine(): Promise<void> {
    const { session } = this;
    if (session !== null) this.mine = await makersPace(session);
  }

  // ---- the page ----

  protected override render(): TemplateResult {
    const { answer } = this;
    return html`
      <h2 id="ease-name" tabindex="-1">Easier to knot</h2>
      <p class="unseen" role="status">${this.busy ? 'Looking for what would be easier.' : this.news}</p>
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      ${wordsUsed('lead (L1, L2 …)', 'float')}
      ${this.unasked ? this.invitation() : nothing}
      <div aria-busy=${this.busy ? 'true' : 'false'} class=${this.isCurrent ? '' : 'ease-old'}>
        ${answer === null ? nothing : this.found(answer.of, answer.to)}
      </div>
    `;
  }

  private invitation(): TemplateResult {
    return html`<div class="invitation">
      <p>A piece so large takes a while. It is looked through beside the page, which goes on answering.</p>
      <button type="button" @click=${() => void this.look()}>Look for what would be easier</button>
    </div>`;
  }

  private found(answer: EaseAnswer, to: Basis): TemplateResult {
    const { before, ok } = answer;
    return html`
      <p>
        As it is: ${effortInWords(before)}; about ${timeInWords(before.seconds)}, by the pace below.
      </p>
      ${this.undoing()}
      ${
        ok
          ? suggestionList(answer, to.chart, this.all, this.isCurrent, this.suggestionActions)
          : html`<p>It does not knot out as drawn. Mend that first; then what would be easier is looked for.</p>`
      }
      ${bestStart(answer.way, this.mayMirror, this.isCurrent, {
        setMirror: (may) => this.setMirror(may),
        start: (way) => this.start(way),
      })}
      ${paceFields(this.pace, this.wrongPace, this.mine, {
        opened: () => void this.lookForMine(),
        set: (name, text) => this.setPace(name, text),
        take: (pace) => {
          this.wrongPace = null;
          this.takePace(pace);
        },
      })}
    `;
  }

  private undoing(): TemplateResult | typeof nothing {
    const { session, applied } = this;
    if (applied === '' || session?.undoing !== applied) return nothing;
    return html`<p class="ease-done">
      Done: ${applied.charAt(0).toLowerCase()}${applied.slice(1)}.
      <button type="button" @click=${() => session.undo()}>Undo it</button>
    </p>`;
  }

  /** The button that was pressed may be gone with the suggestion. */
  protected override updated(): void {
    if (!this.returnFocus || this.busy || !this.isCurrent) return;
    this.returnFocus = false;
    if (document.activeElement === document.body) {
      this.querySelector<HTMLElement>('#ease-name')?.focus();
    }
  }
}

customElements.define('halfhitch-ease', EasePanel);
