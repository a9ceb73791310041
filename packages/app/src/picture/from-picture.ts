import { CHART_LIMITS, type Chart, InputError, printable } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import { reasonOf } from '../work/reason.js';
import './chart-preview.js';
import { checkFileSize } from './check-file.js';
import { PictureDesk } from './desk.js';
import { chooser, colourFields, cropFields, type PictureWish, sizeFields } from './fields.js';
import type { OwnThread } from './match-threads.js';
import {
  FIRST_FIGURES,
  type Figure,
  followedSize,
  limitsOf,
  type PictureErrors,
  type Typed,
  typedCrop,
} from './measures.js';
import type { OpenPicture, PictureResult } from './messages.js';
import { readWhole } from './number-field.js';
import { pictureResults } from './results.js';
import { type Crop, fitCrop, stretch } from './size.js';
import { type ThreadChoice, threadChoices } from './threads-field.js';
import { USUAL_THREADS } from './usual-threads.js';

/** Long enough for the next figure or the next movement of a finger, ms. */
const PAUSE = 150;
/** A part of a percent more or less is nobody's doing. */
const SEEN_DISTORTION = 0.03;

/**
 * Makes a chart of a photograph or drawing. Fires `chart-made` with the chart and what was done.
 * What it works with is loaded with it, and its picture never leaves the device.
 */
export class FromPicture extends PageElement {
  static override properties = {
    colours: { attribute: false },
    aspect: { attribute: false },
    picture: { state: true },
    crop: { state: true },
    typed: { state: true },
    errors: { state: true },
    keep: { state: true },
    matched: { state: true },
    threads: { state: true },
    dither: { state: true },
    tidy: { state: true },
    ground: { state: true },
    result: { state: true },
    busy: { state: true },
    problem: { state: true },
  };

  /** Threads that the open chart has; ticked to begin with. */
  declare colours: readonly OwnThread[];
  /** Width of a knot by its height; null for that of tight knots of one thread. */
  declare aspect: number | null;
  declare private picture: OpenPicture | null;
  declare private crop: Crop;
  declare private typed: Typed;
  declare private errors: PictureErrors;
  declare private keep: boolean;
  declare private matched: boolean;
  declare private threads: readonly ThreadChoice[];
  declare private dither: boolean;
  declare private tidy: boolean;
  declare private ground: string;
  declare private result: (PictureResult & { readonly used: readonly OwnThread[] }) | null;
  declare private busy: boolean;
  declare private problem: string;

  private readonly desk = new PictureDesk();
  private name = '';
  private tight: number | null = null;
  private timer = 0;
  /** Which of the two the maker last gave; the other one follows. */
  private leading: 'columns' | 'rows' = 'columns';

  constructor() {
    super();
    this.colours = [];
    this.aspect = null;
    this.picture = null;
    this.crop = { left: 0, top: 0, width: 1, height: 1 };
    this.typed = FIRST_FIGURES;
    this.errors = {};
    this.keep = true;
    this.matched = false;
    this.threads = threadChoices([], USUAL_THREADS);
    this.dither = false;
    this.tidy = true;
    this.ground = '#ffffff';
    this.result = null;
    this.busy = false;
    this.problem = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
    this.picture?.preview.close();
    this.picture = null;
    this.result = null;
    this.desk.close();
  }

  protected override willUpdate(changes: PropertyValues): void {
    if (changes.has('colours') && this.colours.length > 0) {
      this.threads = threadChoices(this.colours, USUAL_THREADS);
    }
    if (changes.has('aspect') && this.picture !== null) this.follow();
  }

  private get knotAspect(): number {
    return this.aspect ?? this.tight ?? 1;
  }

  // ---- what the maker does ----

  private async open(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    this.busy = true;
    this.problem = '';
    try {
      checkFileSize(file.size, file.name);
      const [picture] = await Promise.all([
        this.desk.ask({ ask: 'open', file }),
        this.aspect === null && this.tight === null ? this.measureKnot() : undefined,
      ]);
      if (picture === null) return;
      if (!this.isConnected) {
        picture.preview.close();
        return;
      }
      this.picture?.preview.close();
      this.picture = picture;
      this.name = nameOf(file.name);
      this.result = null;
      this.setCrop({ left: 0, top: 0, width: picture.width, height: picture.height });
    } catch (error) {
      this.fail(error);
    }
  }

  private async measureKnot(): Promise<void> {
    this.tight ??= await this.desk.ask({ ask: 'aspect', edge: 'straight' });
  }

  private setCrop(wanted: Crop): void {
    if (this.picture === null) return;
    this.crop = fitCrop(wanted, this.picture);
    this.typed = { ...this.typed, ...typedCrop(this.crop) };
    const { left: _, top: __, width: ___, height: ____, ...others } = this.errors;
    this.errors = others;
    this.follow();
    this.later();
  }

  private fill(figure: Figure, text: string): void {
    const { picture } = this;
    if (picture === null) return;
    this.typed = { ...this.typed, [figure]: text };
    if (figure === 'columns' || figure === 'rows') this.leading = figure;
    const read = readWhole(text, ...limitsOf(figure, picture));
    const { [figure]: _, ...others } = this.errors;
    this.errors = typeof read === 'string' ? { ...others, [figure]: read } : others;
    if (typeof read === 'string') return;
    if (figure in this.crop) {
      this.crop = fitCrop({ ...this.crop, [figure]: read }, picture);
      this.follow();
    } else if (figure !== 'colours') this.follow();
    this.later();
  }

  /** Where proportions are kept, the size that was not given follows the one that was. */
  private follow(): void {
    if (!this.keep) return;
    const { crop, knotAspect, leading, typed, errors } = this;
    const followed = followedSize(leading, typed, errors, crop, knotAspect);
    if (followed === null) return;
    this.typed = followed.typed;
    this.errors = followed.errors;
  }

  private set(change: () => void): void {
    change();
    this.later();
  }

  // ---- working out ----

  private later(): void {
    clearTimeout(this.timer);
    if (this.picture === null) return;
    const { threads: _, ...others } = this.errors;
    const none = this.matched && !this.threads.some(({ used }) => used);
    this.errors = none ? { ...others, threads: 'Tick at least one thread.' } : others;
    this.busy = Object.keys(this.errors).length === 0;
    if (this.busy) this.timer = window.setTimeout(() => void this.workOut(), PAUSE);
  }

  private async workOut(): Promise<void> {
    const { typed, crop, ground } = this;
    const used = this.matched ? this.threads.filter((thread) => thread.used) : [];
    try {
      const made = await this.desk.ask({
        ask: 'make',
        wish: {
          crop,
          size: { columns: Number(typed.columns), rows: Number(typed.rows) },
          ground,
          palette: {
            colours: Number(typed.colours),
            threads: used.map(({ hex, name }) => ({ hex, name })),
            dither: this.dither,
            tidy: this.tidy,
          },
          name: this.name,
        },
      });
      if (made === null || !this.isConnected) return;
      this.result = { ...made, used };
      this.problem = '';
      this.busy = false;
    } catch (error) {
      this.fail(error);
    }
  }

  private fail(error: unknown): void {
    this.busy = false;
    this.problem = reasonOf(error);
    if (!(error instanceof InputError) && error instanceof TypeError) throw error;
  }

  private readonly use = (): void => {
    const { result, ready } = this;
    if (result === null || !ready) return;
    const detail: { chart: Chart; what: string } = {
      chart: result.chart,
      what: `Make a chart of ${this.name || 'a picture'}`,
    };
    this.dispatchEvent(new CustomEvent('chart-made', { detail, bubbles: true }));
  };

  private get ready(): boolean {
    return this.result !== null && !this.busy && Object.keys(this.errors).length === 0;
  }

  // ---- what is shown ----

  protected override render(): TemplateResult {
    return html`
      ${chooser(this.picture !== null, (file) => void this.open(file))}
      ${this.problem === '' ? nothing : html`<div class="problem" role="alert"><p>${this.problem}</p></div>`}
      ${this.picture === null ? nothing : this.form(this.picture)}
      <p class="unseen" role="status">${this.status()}</p>
    `;
  }

  private status(): string {
    if (this.busy) return 'Working …';
    if (!this.ready || this.result === null) return '';
    const { rows, columns, colours } = this.result.chart;
    return `Worked out: ${rows} rows of ${columns} knots in ${colours.length} colours.`;
  }

  private form(picture: OpenPicture): TemplateResult {
    const { crop, typed, errors, keep, matched, tidy, dither, threads, ground } = this;
    const wish: PictureWish = {
      crop,
      typed,
      errors,
      aspect: this.knotAspect,
      choices: { keep, matched, tidy, dither },
      threads,
      ground,
      setCrop: (wanted) => this.setCrop(wanted),
      fill: (figure, text) => this.fill(figure, text),
      choose: (which, on) =>
        this.set(() => {
          this[which] = on;
          if (which === 'keep') this.follow();
        }),
      setThreads: (chosen) =>
        this.set(() => {
          this.threads = chosen;
        }),
      setGround: (hex) =>
        this.set(() => {
          this.ground = hex;
        }),
    };
    return html`<form
      class="making-bench"
      novalidate
      @submit=${(event: Event) => {
        event.preventDefault();
        this.use();
      }}
    >
      <div class="making-side">
        <div class="making-first">${cropFields(picture, wish)}</div>
        <div class="making-rest">${sizeFields(wish)} ${colourFields(wish)}</div>
      </div>
      <div class="making-result">
        <div class="making-preview">
          <h3>What it becomes</h3>
          <halfhitch-chart-preview
            .chart=${this.result?.chart ?? null}
            .aspect=${this.knotAspect}
            .desk=${this.desk}
            ?data-old=${!this.ready}
          ></halfhitch-chart-preview>
          <button type="submit" class="primary" aria-disabled=${this.ready ? 'false' : 'true'}>
            Use this
          </button>
        </div>
        <div class="making-notes">
          ${this.result === null ? nothing : pictureResults(this.result, this.result.used, this.distortion())}
        </div>
      </div>
    </form>`;
  }

  /** Percent that the result is too high, to whole ones; 0 where nobody sees it. */
  private distortion(): number {
    const { result, crop } = this;
    if (result === null) return 0;
    const factor = stretch(crop, result.chart, this.knotAspect);
    return this.keep || Math.abs(factor - 1) < SEEN_DISTORTION ? 0 : Math.round(100 * (factor - 1));
  }
}

/** A file's name without its kind, as a chart's name. */
function nameOf(fileName: string): string {
  const bare = printable(fileName.replace(/\.[a-z0-9]{1,5}$/i, '')).trim();
  return [...bare].slice(0, CHART_LIMITS.maxName).join('');
}

customElements.define('halfhitch-from-picture', FromPicture);
