import {
  type BestWay,
  effortInWords,
  gainInWords,
  LETTERS_IN_WORDS,
  mirroredChart,
  type Pace,
  suggestionInWords,
  timeInWords,
  withCells,
} from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { AlphaProject } from '../project/project.js';
import type { Session } from '../project/session.js';
import { counted, figures } from '../view/figures.js';
import '../view/swatch.js';
import { SessionWatch } from '../view/session-watch.js';
import { EaseDesk } from './desk.js';
import { makersPace } from './makers-pace.js';
import type { Advice, EaseAnswer } from './messages.js';
import { keepPace, keptPace, PACE_LIMITS, readPace } from './pace.js';
import { bestInWords, doneInWords, wayInWords } from './way-words.js';

/** A larger piece takes seconds, so it is looked through only when it is asked for. */
const MOST_UNASKED = 150_000;

/** Long enough for the next stroke of a pencil to come, ms. */
const PAUSE = 250;

/** Suggestions shown before more are asked for. */
const FEW = 5;

/** What of a project decides the answer. */
type Basis = Pick<AlphaProject, 'id' | 'chart' | 'choice' | 'cut'>;

/**
 * What would make the open piece easier to knot, each with what it saves, to be shown on the chart
 * and applied; and the best way to start it. Fires `place` to show something on the chart, with its
 * row and column from 0.
 */
export class EasePanel extends LitElement {
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

  /** In the page itself, as all of it is. */
  protected override createRenderRoot(): HTMLElement {
    return this;
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
          ? this.suggestions(answer, to)
          : html`<p>It does not knot out as drawn. Mend that first; then what would be easier is looked for.</p>`
      }
      ${this.bestStart(answer.way)} ${this.paceFields()}
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

  private suggestions({ advice, untried }: EaseAnswer, to: Basis): TemplateResult {
    if (advice.length === 0) {
      return html`<p>Nothing small was found that would make it easier.</p>`;
    }
    const shown = this.all ? advice : firstFew(advice);
    const more = advice.length - shown.length;
    return html`
      <ol class="ease-list" role="list">
        ${shown.map((one) => this.suggestion(one, to))}
      </ol>
      ${
        more === 0
          ? nothing
          : html`<button type="button" class="small" @click=${() => {
              this.all = true;
            }}>Show ${more} more</button>`
      }
      <p class="hint">
        Each stands for itself and was proven by planning and verifying the piece with and without
        it. Thread and time are estimates.
        ${untried > 0 ? `${untried} more ideas were not tried, since the chart is large.` : nothing}
      </p>
    `;
  }

  private suggestion(advice: Advice, { chart }: Basis): TemplateResult {
    const { suggestion, thread } = advice;
    const what = suggestionInWords(chart, suggestion);
    const [first] = suggestion.cells;
    const off = this.isCurrent ? 'false' : 'true';
    return html`<li>
      <p class="ease-what">
        ${
          first === undefined || suggestion.kind === 'every-spot'
            ? nothing
            : html`<span class="ease-colours" aria-hidden="true">
              <halfhitch-swatch .colour=${chart.colours[first.from]?.hex ?? ''}></halfhitch-swatch>
              <halfhitch-swatch .colour=${chart.colours[first.to]?.hex ?? ''}></halfhitch-swatch>
            </span>`
        }
        <strong>${what}</strong>
      </p>
      <p>
        ${gainInWords(suggestion.gain, thread)}
        ${suggestion.ofShape ? 'Part of a larger shape: look at it before you apply this.' : nothing}
      </p>
      <p class="ease-buttons">
        ${
          first === undefined
            ? nothing
            : html`<button
              type="button"
              aria-disabled=${off}
              aria-label=${`Show: ${what}`}
              @click=${() => this.isCurrent && this.show(advice)}
            >Show</button>`
        }
        <button
          type="button"
          aria-disabled=${off}
          aria-label=${`Apply: ${what}`}
          @click=${() => this.apply(advice)}
        >Apply</button>
      </p>
    </li>`;
  }

  private bestStart(way: BestWay): TemplateResult {
    const saved = bestInWords(way);
    const { best, ways, current } = way;
    return html`
      <h3>The best way to start</h3>
      <label class="check">
        <input
          type="checkbox"
          .checked=${this.mayMirror}
          @change=${(event: Event) => this.setMirror((event.target as HTMLInputElement).checked)}
        />
        The drawing may be mirrored or turned for it
      </label>
      ${
        saved === null
          ? html`<p>As it is now, ${lower(wayInWords(current))}, is the best of the ${ways.length} ways.</p>`
          : html`<p>${wayInWords(best)}. ${saved} ${LETTERS_IN_WORDS[best.mirroring]}</p>
            <button
              type="button"
              aria-disabled=${this.isCurrent ? 'false' : 'true'}
              @click=${() => this.start(way)}
            >${doneInWords(way)}</button>`
      }
      <details class="fold">
        <summary>All ways, and what each costs</summary>
        <table class="ease-ways">
          <thead>
            <tr>
              <th scope="col">Way</th>
              <th scope="col" class="amount">Changes</th>
              <th scope="col" class="amount">Float, knots</th>
            </tr>
          </thead>
          <tbody>
            ${ways.map(
              (each) => html`<tr>
                <th scope="row">
                  ${wayInWords(each)}${each === current ? ' (as now)' : nothing}${
                    each.state === 'wrong' ? '; does not knot out' : nothing
                  }${each.state === 'counted' ? '; counted, not proven' : nothing}
                </th>
                <td class="amount">${figures(each.effort.changes)}</td>
                <td class="amount">${figures(Math.round(each.effort.floatKnots))}</td>
              </tr>`,
            )}
          </tbody>
        </table>
      </details>
    `;
  }

  private paceFields(): TemplateResult {
    const { mine } = this;
    return html`<details class="fold" @toggle=${() => void this.lookForMine()}>
      <summary>How fast you knot</summary>
      <p class="hint">
        Times are worked out from these two, which are yours to choose. What is filled in at first
        is a practised hand’s (common practice, no source).
      </p>
      <div class="ease-pace">
        ${this.paceField('halfHitch', 'Seconds for a half hitch')}
        ${this.paceField('change', 'Seconds more for a colour change')}
      </div>
      ${
        mine === null
          ? nothing
          : html`<button type="button" class="small" @click=${() => {
              this.wrongPace = null;
              this.takePace(mine);
            }}>Use the pace you have tied this at: ${mine.halfHitch} s and ${mine.change} s</button>`
      }
    </details>`;
  }

  private paceField(name: keyof Pace, label: string): TemplateResult {
    const wrong = this.wrongPace === name;
    const { least, most } = PACE_LIMITS[name];
    return html`<div class="field ${wrong ? 'wrong' : ''}">
      <label for="ease-${name}">${label}</label>
      <input
        id="ease-${name}"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        maxlength="6"
        aria-invalid=${wrong ? 'true' : 'false'}
        aria-describedby=${wrong ? `ease-${name}-error` : nothing}
        .value=${String(this.pace[name])}
        @input=${(event: Event) => this.setPace(name, (event.target as HTMLInputElement).value)}
      />
      ${
        wrong
          ? html`<p class="field-error" id="ease-${name}-error" role="alert">Give a number from ${least} to ${most}.</p>`
          : nothing
      }
    </div>`;
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

/** The first few; that all stray knots can go at once is among them, wherever it comes. */
function firstFew(advice: readonly Advice[]): readonly Advice[] {
  const every = advice.findIndex(({ suggestion }) => suggestion.kind === 'every-spot');
  if (every < FEW) return advice.slice(0, FEW);
  return [...advice.slice(0, FEW - 1), ...advice.slice(every, every + 1)];
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

customElements.define('halfhitch-ease', EasePanel);
