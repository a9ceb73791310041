import type { Chart } from '@halfhitch/core';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import type { PictureDesk } from './desk.js';
import { MOST_KNOTS_DRAWN } from './limits.js';
import { ThreadSamples } from './thread-samples.js';

type Look = 'thread' | 'chart';

/** How a piece that hangs down is laid on its side, so that words along it can be read. */
export type Lying = 'hanging' | 'first-row-left' | 'first-row-right';

/** Widest that a knot is shown, and the least that still shows its colour, px. */
const LARGEST = 26;
const SMALLEST = 2.5;
/** No browser draws a canvas with longer sides, px. */
const LONGEST = 8192;
/** Knots as narrow as this are no longer parted by lines, px. */
const LINED = 5;
/** Long enough for the next letter or figure to come before thread is drawn, ms. */
const PAUSE = 250;

/** Where the preview stays in sight above the fields. */
const NARROW = matchMedia('(max-width: 47.99rem)');

/** A chart as it will look: knots at their true proportions, plain or as thread. */
export class ChartPreview extends PageElement {
  static override properties = {
    chart: { attribute: false },
    aspect: { attribute: false },
    desk: { attribute: false },
    lying: { attribute: false },
    look: { state: true },
  };

  declare chart: Chart | null;
  /** Width of a knot by its height. */
  declare aspect: number;
  declare desk: PictureDesk | null;
  declare lying: Lying;
  declare private look: Look;

  /** What is needed to draw a chart as thread. */
  private threads: { readonly chart: Chart; readonly kinds: Uint8Array } | null = null;
  private readonly samples = new ThreadSamples();
  private readonly sizes = new ResizeObserver(() => this.paint());
  private timer = 0;
  /** What the canvas shows: drawing thread costs too much to be done again for nothing. */
  private painted: {
    readonly canvas: HTMLCanvasElement;
    readonly chart: Chart;
    readonly how: string;
  } | null = null;

  constructor() {
    super();
    this.chart = null;
    this.aspect = 1;
    this.desk = null;
    this.lying = 'hanging';
    this.look = 'thread';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    clearTimeout(this.timer);
    this.samples.clear();
    this.threads = null;
  }

  protected override updated(changes: PropertyValues): void {
    if (changes.has('chart') || changes.has('look')) {
      clearTimeout(this.timer);
      this.timer = window.setTimeout(() => void this.draw(), PAUSE);
    }
    this.paint();
  }

  private get drawable(): boolean {
    const { chart } = this;
    return chart !== null && chart.rows * chart.columns <= MOST_KNOTS_DRAWN;
  }

  /** Has the knots worked out, and a sample of each thread drawn; until then the chart is shown. */
  private async draw(): Promise<void> {
    const { chart, desk } = this;
    if (chart === null || desk === null || this.look !== 'thread' || !this.drawable) return;
    if (this.threads?.chart === chart) return;
    const choice = { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' } as const;
    try {
      const kinds = await desk.ask({ ask: 'kinds', chart, choice });
      if (kinds === null) return;
      for (const { hex } of chart.colours) {
        await this.samples.fetch(hex, desk);
        if (this.chart !== chart || !this.isConnected) return;
      }
      this.threads = { chart, kinds };
      this.paint();
    } catch {
      // The plain look tells the same; whoever asked for the chart says what went wrong.
    }
  }

  private paint(): void {
    const { chart, lying, aspect } = this;
    const canvas = this.querySelector('canvas');
    const frame = this.querySelector<HTMLElement>('.preview-frame');
    if (chart === null || canvas === null || frame === null) return;
    const padding = Number.parseFloat(getComputedStyle(frame).paddingInlineStart) || 0;
    const knot = this.knotSize(chart, frame.clientWidth - 2 * padding);
    const threads = this.look === 'thread' && this.threads?.chart === chart ? this.threads : null;
    const how = [knot, aspect, lying, threads !== null, devicePixelRatio].join();
    const before = this.painted;
    if (before?.canvas === canvas && before.chart === chart && before.how === how) return;
    this.painted = { canvas, chart, how };
    const hanging = { width: chart.columns * knot, height: (chart.rows * knot) / aspect };
    const turned = lying !== 'hanging';
    const width = turned ? hanging.height : hanging.width;
    const height = turned ? hanging.width : hanging.height;
    const fine = Math.min(devicePixelRatio, LONGEST / Math.max(width, height));
    canvas.width = Math.max(1, Math.round(width * fine));
    canvas.height = Math.max(1, Math.round(height * fine));
    canvas.style.width = `${width}px`;
    canvas.style.height = `${height}px`;
    const context = canvas.getContext('2d');
    if (context === null) return;
    context.scale(canvas.width / width, canvas.height / height);
    if (lying === 'first-row-left') {
      context.translate(0, height);
      context.rotate(-Math.PI / 2);
    } else if (lying === 'first-row-right') {
      context.translate(width, 0);
      context.rotate(Math.PI / 2);
    }
    if (threads !== null) {
      this.samples.weave(context, chart, threads.kinds, hanging, fine);
      return;
    }
    context.imageSmoothingEnabled = false;
    context.drawImage(flat(chart), 0, 0, hanging.width, hanging.height);
    if (knot >= LINED) rule(context, chart, knot, knot / aspect);
  }

  /** Width of a knot so that all of the chart is in sight, as long as knots can be told apart. */
  private knotSize({ rows, columns }: Chart, room: number): number {
    const { aspect, lying } = this;
    const tall = Math.min(460, innerHeight * (NARROW.matches ? 0.3 : 0.6));
    const [across, down] = lying === 'hanging' ? [room, tall] : [tall, room];
    const fitting = Math.min(across / columns, (down / rows) * aspect, LARGEST);
    return Math.max(fitting, Math.min(SMALLEST, (LONGEST / rows) * aspect));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { chart, lying, drawable } = this;
    if (chart === null) return nothing;
    const colours = chart.colours.map(({ name, hex }) => name || hex).join(', ');
    const words = `${figures(chart.rows)} rows of ${chart.columns} knots in ${colours}`;
    return html`
      <fieldset class="switch preview-look">
        <legend class="unseen">Look of the preview</legend>
        ${(['thread', 'chart'] as const).map(
          (look) => html`<label>
            <input
              type="radio"
              name="preview-look"
              .checked=${this.look === look}
              @change=${() => {
                this.look = look;
              }}
            />
            ${look === 'thread' ? 'Thread' : 'Chart'}
          </label>`,
        )}
      </fieldset>
      <div class="preview-frame" tabindex="0" role="region" aria-label="Preview">
        <canvas role="img" aria-label=${words}></canvas>
      </div>
      ${
        lying === 'hanging'
          ? nothing
          : html`<p class="hint">
              Laid on its side, to be read: the first row is on the
              ${lying === 'first-row-left' ? 'left' : 'right'}.
            </p>`
      }
      ${
        this.look === 'thread' && !drawable
          ? html`<p class="hint">
              Shown as a chart: more than ${figures(MOST_KNOTS_DRAWN)} knots are not
              drawn as thread here.
            </p>`
          : nothing
      }
    `;
  }
}

/** One pixel for each knot. */
function flat({ rows, columns, colours, cells }: Chart): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = columns;
  canvas.height = rows;
  const context = canvas.getContext('2d');
  if (context === null) return canvas;
  const pixels = context.createImageData(columns, rows);
  const values = colours.map(({ hex }) => Number.parseInt(hex.slice(1), 16));
  cells.forEach((colour, i) => {
    const value = values[colour] as number;
    pixels.data.set([value >> 16, (value >> 8) & 255, value & 255, 255], 4 * i);
  });
  context.putImageData(pixels, 0, 0);
  return canvas;
}

function rule(
  context: CanvasRenderingContext2D,
  { rows, columns }: Chart,
  width: number,
  height: number,
): void {
  context.strokeStyle = 'rgb(128 128 128 / 55%)';
  context.lineWidth = 0.75;
  context.beginPath();
  for (let column = 1; column < columns; column++) {
    context.moveTo(column * width, 0);
    context.lineTo(column * width, rows * height);
  }
  for (let row = 1; row < rows; row++) {
    context.moveTo(0, row * height);
    context.lineTo(columns * width, row * height);
  }
  context.stroke();
}

customElements.define('halfhitch-chart-preview', ChartPreview);
