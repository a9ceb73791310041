import { CHART_LIMITS, type Chart, InputError, printable } from '@halfhitch/core';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { reasonOf } from '../work/reason.js';
import './chart-preview.js';
import './crop-frame.js';
import { checkFileSize } from './check-file.js';
import { PictureDesk } from './desk.js';
import { PICTURE_LIMITS } from './limits.js';
import type { OwnThread } from './match-threads.js';
import type { OpenPicture, PictureResult } from './messages.js';
import { numberField, readWhole } from './number-field.js';
import { pictureResults } from './results.js';
import {
  type Crop,
  columnsForRows,
  fitCrop,
  rowsForColumns,
  sizeForColumns,
  stretch,
} from './size.js';
import { type ThreadChoice, threadChoices, threadsField } from './threads-field.js';
import { USUAL_THREADS } from './usual-threads.js';

/** Long enough for the next figure or the next movement of a finger, ms. */
const PAUSE = 150;
const FIRST_COLUMNS = 30;
/** A part of a percent more or less is nobody's doing. */
const SEEN_DISTORTION = 0.03;

type Figure = 'left' | 'top' | 'width' | 'height' | 'columns' | 'rows' | 'colours';

/**
 * Makes a chart of a photograph or drawing. Fires `chart-made` with the chart and what was done.
 * What it works with is loaded with it, and its picture never leaves the device.
 */
export class FromPicture extends LitElement {
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
  declare private typed: Readonly<Record<Figure, string>>;
  declare private errors: Readonly<Partial<Record<Figure | 'threads', string>>>;
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
    this.typed = {
      left: '0',
      top: '0',
      width: '1',
      height: '1',
      columns: String(FIRST_COLUMNS),
      rows: '1',
      colours: '6',
    };
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

  protected override createRenderRoot(): HTMLElement {
    return this;
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
    const { left, top, width, height } = this.crop;
    this.typed = {
      ...this.typed,
      left: String(left),
      top: String(top),
      width: String(width),
      height: String(height),
    };
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
    const limits: Readonly<Record<Figure, readonly [number, number]>> = {
      left: [0, picture.width - 1],
      top: [0, picture.height - 1],
      width: [1, picture.width],
      height: [1, picture.height],
      columns: [CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns],
      rows: [CHART_LIMITS.minRows, CHART_LIMITS.maxRows],
      colours: [PICTURE_LIMITS.minColours, PICTURE_LIMITS.maxColours],
    };
    const read = readWhole(text, ...limits[figure]);
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
    const { crop, knotAspect, leading, typed } = this;
    const { columns: _, rows: __, ...others } = this.errors;
    if (leading === 'columns') {
      const columns = readWhole(typed.columns, CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns);
      if (typeof columns === 'string') return;
      const rows = rowsForColumns(crop, columns, knotAspect);
      this.typed = { ...typed, rows: String(rows) };
      const most = sizeForColumns(crop, columns, knotAspect).columns;
      this.errors =
        most < columns
          ? {
              ...others,
              columns: `So wide, it would take more rows than a chart has: at most ${most}.`,
            }
          : others;
      return;
    }
    const rows = readWhole(typed.rows, CHART_LIMITS.minRows, CHART_LIMITS.maxRows);
    if (typeof rows === 'string') return;
    this.typed = { ...typed, columns: String(columnsForRows(crop, rows, knotAspect)) };
    const wide = (rows * crop.width) / crop.height / knotAspect;
    this.errors =
      wide > CHART_LIMITS.maxColumns + 0.5
        ? {
            ...others,
            rows: `So long, it would be wider than a chart can be: at most ${rowsForColumns(crop, CHART_LIMITS.maxColumns, knotAspect)}.`,
          }
        : others;
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
      ${this.chooser()}
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

  private chooser(): TemplateResult {
    const stop = (event: DragEvent): void => {
      event.preventDefault();
      event.stopPropagation();
    };
    return html`<div
      class="picture-chooser"
      @dragover=${stop}
      @drop=${(event: DragEvent) => {
        stop(event);
        void this.open(event.dataTransfer?.files[0]);
      }}
    >
      <label class="button ${this.picture === null ? 'primary' : ''}">
        ${this.picture === null ? 'Choose a picture' : 'Another picture'}
        <input
          class="unseen"
          type="file"
          accept="image/png,image/jpeg,image/webp"
          @change=${(event: Event) => {
            const input = event.target as HTMLInputElement;
            const file = input.files?.[0];
            input.value = '';
            void this.open(file);
          }}
        />
      </label>
      <p class="hint">
        PNG, JPEG or WebP of at most ${PICTURE_LIMITS.maxBytes / 2 ** 20} MiB and
        ${PICTURE_LIMITS.maxPixels / 1e6} megapixels. It stays on this device.
      </p>
    </div>`;
  }

  private form(picture: OpenPicture): TemplateResult {
    return html`<form
      class="making-bench"
      novalidate
      @submit=${(event: Event) => {
        event.preventDefault();
        this.use();
      }}
    >
      <div class="making-side">
        <div class="making-first">${this.cropFields(picture)}</div>
        <div class="making-rest">${this.sizeFields()} ${this.colourFields()}</div>
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

  private number(figure: Figure, label: string, unit?: string, hint?: string): TemplateResult {
    return numberField({
      id: `picture-${figure}`,
      label,
      ...(unit === undefined ? {} : { unit }),
      ...(hint === undefined ? {} : { hint }),
      value: this.typed[figure],
      error: this.errors[figure],
      fill: (text) => this.fill(figure, text),
    });
  }

  private cropFields(picture: OpenPicture): TemplateResult {
    const whole = { left: 0, top: 0, width: picture.width, height: picture.height };
    return html`<fieldset>
      <legend>Part of the picture</legend>
      <halfhitch-crop-frame
        .picture=${picture.preview}
        .size=${picture}
        .crop=${this.crop}
        @crop=${(event: CustomEvent<Crop>) => this.setCrop(event.detail)}
      ></halfhitch-crop-frame>
      <p class="hint">
        Drag the frame or its corners, or type where it lies. The picture has ${picture.width} ×
        ${picture.height} pixels.
      </p>
      <div class="fields">
        ${this.number('left', 'From the left', 'px')} ${this.number('top', 'From the top', 'px')}
        ${this.number('width', 'Width', 'px')} ${this.number('height', 'Height', 'px')}
      </div>
      <button type="button" class="small" @click=${() => this.setCrop(whole)}>The whole picture</button>
    </fieldset>`;
  }

  private sizeFields(): TemplateResult {
    const high = (1 / this.knotAspect).toFixed(2);
    return html`<fieldset>
      <legend>Size in knots</legend>
      <div class="fields">
        ${this.number('columns', 'Columns', 'knots wide')} ${this.number('rows', 'Rows', 'knots long')}
      </div>
      ${this.check('keep', 'Keep the proportions of the picture', () => this.follow())}
      <p class="hint">A knot is ${high} times as high as it is wide; this is reckoned with.</p>
    </fieldset>`;
  }

  private colourFields(): TemplateResult {
    return html`<fieldset>
      <legend>Colours</legend>
      <div class="fields">${this.number('colours', 'Colours, at most')}</div>
      ${this.check('matched', 'Use my threads')}
      ${
        this.matched
          ? html`${threadsField(this.threads, (threads) =>
              this.set(() => {
                this.threads = threads;
              }),
            )}
            ${this.errors.threads === undefined ? nothing : html`<p class="field-error" role="alert">${this.errors.threads}</p>`}`
          : nothing
      }
      ${this.check('tidy', 'Take out stray single knots')}
      ${this.check('dither', 'Mix colours by dots (dithering)')}
      ${
        this.dither
          ? html`<p class="hint">
              Dots make soft shades, and very many colour changes to
              knot.${this.tidy ? ' Stray knots are taken out, and some of the dots with them.' : ''}
            </p>`
          : nothing
      }
      <div class="field picture-ground">
        <label for="picture-ground">Behind what can be seen through</label>
        <input
          id="picture-ground"
          type="color"
          .value=${this.ground}
          @input=${(event: Event) =>
            this.set(() => {
              this.ground = (event.target as HTMLInputElement).value.toLowerCase();
            })}
        />
      </div>
    </fieldset>`;
  }

  private check(
    which: 'keep' | 'matched' | 'tidy' | 'dither',
    label: string,
    then?: () => void,
  ): TemplateResult {
    return html`<label class="check">
      <input
        type="checkbox"
        .checked=${this[which]}
        @change=${(event: Event) =>
          this.set(() => {
            this[which] = (event.target as HTMLInputElement).checked;
            then?.();
          })}
      />
      ${label}
    </label>`;
  }
}

/** A file's name without its kind, as a chart's name. */
function nameOf(fileName: string): string {
  const bare = printable(fileName.replace(/\.[a-z0-9]{1,5}$/i, '')).trim();
  return [...bare].slice(0, CHART_LIMITS.maxName).join('');
}

customElements.define('halfhitch-from-picture', FromPicture);
