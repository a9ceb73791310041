import type { Chart, StartSide } from '@halfhitch/core';
import type { Tile } from '../../work/fabric-tile.js';
import { isIn } from '../edit/area.js';
import { isInside, nearest, type Place } from '../edit/place.js';
import { NO_SYMMETRY } from '../edit/symmetry.js';
import { Cursor } from './cursor.js';
import { Drawing } from './drawing.js';
import type { SheetAsk, SheetEdit, SheetSettings } from './events.js';
import { Gestures } from './gestures.js';
import { type Inks, inksOf } from './inks.js';
import { Keys } from './keys.js';
import { HEADER, SheetLayout, withinZoom, zoomed } from './layout.js';
import type { Mark } from './marks.js';
import { memoryContext, SheetPainter } from './paint-sheet.js';
import { SignStamps } from './signs.js';
import { ThreadTiles } from './thread-tiles.js';
import { cellInWords, rowInWords } from './words.js';

/** Most rows of the repeat shown above and below, each. */
const MOST_REPEATED = 40;

/** Finer than this nobody sees it, and twice as many pixels take twice as long. */
const MOST_DPR = 2;

const AT_FIRST: SheetSettings = {
  tool: 'pencil',
  colour: 0,
  ground: 0,
  symmetry: NO_SYMMETRY,
  signs: false,
  asThread: false,
  repeat: false,
};

/**
 * The chart to be drawn on, with its knots as wide and high as they come out. Only what is in
 * sight is painted, on a canvas that stays in place while the sheet is scrolled below it.
 *
 * Fires `draw-edit` (SheetEdit) for each finished stroke, `draw-place` when the cursor or the
 * selection has changed, and `draw-ask` (SheetAsk).
 */
export class Sheet extends HTMLElement {
  /** Draws a tile of the knotted piece; gives an SVG document. */
  drawTile: (tile: Tile) => Promise<string> = async () => '';

  private chart: Chart | null = null;
  private start: StartSide = 'left';
  private aspect = 1;
  private settings = AT_FIRST;
  private marks: readonly Mark[] = [];
  private verified: Chart | null = null;

  private layout: SheetLayout | null = null;
  /** px; null for what suits the room. */
  private cellHeight: number | null = null;
  private inks: Inks | null = null;
  private frame = 0;
  /** Where the hand is, in the page's window. */
  private hand: { readonly x: number; readonly y: number } | null = null;

  private readonly extent = box('sheet-extent');
  private readonly threads = box('sheet-threads');
  private readonly window = box('sheet-frame');
  private readonly canvas = document.createElement('canvas');
  private readonly cursor = new Cursor();
  private readonly painter = new SheetPainter(new SignStamps());
  private readonly tiles = new ThreadTiles(this.threads, (tile) => this.drawTile(tile));
  private sizes: ResizeObserver | null = null;
  private readonly themes = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(
    (query) => matchMedia(query),
  );

  /** What the tools do; the selection, and what can be done with it. */
  readonly drawing = new Drawing(AT_FIRST, {
    edit: (chart, what) => {
      if (chart === this.chart) return;
      this.dispatchEvent(new CustomEvent<SheetEdit>('draw-edit', { detail: { chart, what } }));
    },
    ask: (asked) => this.ask(asked),
    repaint: () => this.wake(),
    placed: () => this.tellPlace(),
  });

  private readonly keys = this.keysOf();

  private readonly gestures = new Gestures(this.window, {
    pushes: ({ button }) => button === 1 || this.settings.tool === 'view' || this.keys.pushes,
    begin: (x, y, event) => {
      const { chart } = this;
      if (chart === null) return;
      this.hand = { x, y };
      const place = this.placeAt(x, y);
      if (isInside(chart, place)) this.goTo(place, { focus: true, reveal: false });
      this.drawing.begin(place, {
        extend: event.shiftKey,
        leave: event.ctrlKey || event.metaKey,
      });
    },
    move: (x, y) => {
      this.hand = { x, y };
      this.drawing.follow(this.placeAt(x, y));
    },
    end: () => {
      this.hand = null;
      this.drawing.finish();
    },
    cancel: () => {
      this.hand = null;
      this.drawing.cancel();
    },
    pushBy: (x, y) => {
      this.keys.pushed();
      this.scrollBy(-x, -y);
    },
    zoomAt: (factor, x, y) => this.zoomAt(factor, x, y),
  });

  private keysOf(): Keys {
    const sheet = this;
    return new Keys({
      drawing: this.drawing,
      get open() {
        return sheet.chart === null ? null : { chart: sheet.chart, colour: sheet.settings.colour };
      },
      get page() {
        return Math.max(1, Math.floor(sheet.clientHeight / (sheet.layout?.cellHeight ?? 20)) - 3);
      },
      goTo: (place, extend) => {
        this.drawing.goTo(place, extend);
        this.goTo(this.drawing.here, { focus: true });
        this.tellPlace();
      },
      zoomBy: (way) => this.zoomBy(way),
      ask: (asked) => this.ask(asked),
    });
  }

  connectedCallback(): void {
    this.classList.add('sheet');
    this.canvas.className = 'sheet-canvas';
    this.canvas.setAttribute('aria-hidden', 'true');
    this.window.append(this.canvas, this.cursor.element);
    this.extent.append(this.threads, this.window);
    this.replaceChildren(this.extent);
    this.addEventListener('scroll', this.onScroll, { passive: true });
    const { grid } = this.cursor;
    grid.addEventListener('keydown', this.keys.onDown);
    grid.addEventListener('keyup', this.keys.onUp);
    grid.addEventListener('focusin', this.onFocus);
    grid.addEventListener('focusout', this.onBlur);
    this.gestures.listen();
    for (const theme of this.themes) theme.addEventListener('change', this.onTheme);
    this.sizes = new ResizeObserver(() => this.layOut());
    this.sizes.observe(this);
  }

  disconnectedCallback(): void {
    this.sizes?.disconnect();
    this.sizes = null;
    this.gestures.unlisten();
    this.removeEventListener('scroll', this.onScroll);
    const { grid } = this.cursor;
    grid.removeEventListener('keydown', this.keys.onDown);
    grid.removeEventListener('keyup', this.keys.onUp);
    grid.removeEventListener('focusin', this.onFocus);
    grid.removeEventListener('focusout', this.onBlur);
    for (const theme of this.themes) theme.removeEventListener('change', this.onTheme);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.tiles.clear();
  }

  // ---- what is shown ----

  /** Shows a chart. `aspect`: width of a knot by its height. */
  show(chart: Chart, start: StartSide, aspect: number): void {
    const before = this.chart;
    if (before === chart && start === this.start && aspect === this.aspect) return;
    const otherSize = before?.rows !== chart.rows || before.columns !== chart.columns;
    const otherAspect = aspect !== this.aspect;
    this.chart = chart;
    this.start = start;
    this.aspect = aspect;
    if (before !== chart) this.gestures.drop();
    this.drawing.take(chart);
    if (otherSize || otherAspect) this.layOut();
    this.setCell(false);
    this.wake();
  }

  /** Another chart altogether: seen from its first knot, in the size that suits it. */
  reset(): void {
    this.chart = null;
    this.cellHeight = null;
    this.drawing.take(null);
    this.scrollTo(0, 0);
  }

  set(settings: SheetSettings): void {
    const before = this.settings;
    if (before === settings) return;
    this.settings = settings;
    if (before.tool !== settings.tool) this.gestures.drop();
    this.drawing.set(settings);
    if (before.repeat !== settings.repeat) this.layOut();
    this.window.dataset['tool'] = settings.tool;
    if (!settings.asThread) this.tiles.clear();
    this.wake();
  }

  /** What was found, and in which chart; null while nothing is known of the chart. */
  found(marks: readonly Mark[], verified: Chart | null): void {
    if (this.marks === marks && this.verified === verified) return;
    if (this.verified !== verified) this.tiles.renew();
    this.marks = marks;
    this.verified = verified;
    this.setCell(false);
    this.wake();
  }

  private wake(): void {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.paint();
    });
  }

  private paint(): void {
    const { chart, layout, canvas, settings } = this;
    const ctx = memoryContext(canvas);
    if (chart === null || layout === null || ctx === null || this.clientHeight === 0) return;
    const dpr = Math.max(1, Math.min(MOST_DPR, devicePixelRatio));
    const view = { width: this.clientWidth, height: this.clientHeight };
    const scroll = { left: this.scrollLeft, top: this.scrollTop };
    const [width, height] = [Math.round(view.width * dpr), Math.round(view.height * dpr)];
    if (canvas.width !== width || canvas.height !== height)
      Object.assign(canvas, { width, height });
    this.inks ??= inksOf(this);
    const shown = this.drawing.inHand ?? chart;
    const { verified } = this;
    const fits = verified?.rows === chart.rows && verified.columns === chart.columns;
    const asThread = settings.asThread && fits && sameThreads(verified, shown);
    this.painter.paint(ctx, {
      layout,
      colours: shown.colours,
      cells: shown.cells,
      start: this.start,
      scroll,
      view,
      dpr,
      signs: settings.signs,
      asThread: asThread ? verified.cells : null,
      symmetry: settings.symmetry,
      marks: fits ? this.marks : [],
      selection: this.drawing.shownSelection,
      here: this.drawing.here,
      inks: this.inks,
    });
    if (asThread) {
      const rows = layout.rowsIn(scroll.top - view.height / 2, scroll.top + 1.5 * view.height);
      this.tiles.show(layout, rows, layout.columnsIn(scroll.left, scroll.left + view.width));
    }
    this.threads.hidden = !asThread;
    this.cursor.place(layout, this.drawing.here, scroll);
    // For whoever waits until the picture is there.
    canvas.dataset['painted'] = String(Number(canvas.dataset['painted'] ?? 0) + 1);
  }

  private readonly onTheme = (): void => {
    this.inks = null;
    this.wake();
  };

  private readonly onScroll = (): void => {
    const { hand } = this;
    if (this.drawing.isOn && hand !== null) this.drawing.follow(this.placeAt(hand.x, hand.y));
    this.wake();
  };

  // ---- size ----

  zoomBy(way: 1 | -1): void {
    const { layout } = this;
    if (layout === null) return;
    const { left, top } = this.getBoundingClientRect();
    const { x, y, width, height } = layout.boxOf(this.drawing.here);
    const inSight = (at: number, size: number): number => (at > 0 && at < size ? at : size / 2);
    this.zoomAt(
      zoomed(layout.cellHeight, way) / layout.cellHeight,
      left + inSight(x + width / 2 - this.scrollLeft, this.clientWidth),
      top + inSight(y + height / 2 - this.scrollTop, this.clientHeight),
    );
  }

  /** All columns in sight, where that leaves knots to be seen. */
  fit(): void {
    this.cellHeight = null;
    this.layOut();
    this.reveal();
  }

  private zoomAt(factor: number, clientX: number, clientY: number): void {
    const before = this.layout;
    if (before === null) return;
    const next = withinZoom(before.cellHeight * factor);
    if (next === before.cellHeight) return;
    const { left, top } = this.getBoundingClientRect();
    const [x, y] = [clientX - left - this.clientLeft, clientY - top - this.clientTop];
    const across = (x + this.scrollLeft - before.left) / before.cellWidth;
    const down = (y + this.scrollTop - before.top) / before.cellHeight;
    this.cellHeight = next;
    this.layOut();
    const after = this.layout ?? before;
    this.scrollTo(
      after.left + across * after.cellWidth - x,
      after.top + down * after.cellHeight - y,
    );
  }

  private layOut(): void {
    const { chart } = this;
    if (chart === null || this.clientWidth === 0) return;
    const before = this.layout;
    const set = (view: { width: number; height: number }): SheetLayout => {
      const layout = new SheetLayout({
        rows: chart.rows,
        columns: chart.columns,
        aspect: this.aspect,
        cellHeight: this.cellHeight,
        repeated: this.settings.repeat ? Math.min(chart.rows, MOST_REPEATED) : 0,
        view,
      });
      this.extent.style.width = `${layout.width}px`;
      this.extent.style.height = `${layout.height}px`;
      return layout;
    };
    const view = { width: this.clientWidth, height: this.clientHeight };
    let layout = set(view);
    // Scroll bars that have come or gone leave another room.
    if (this.clientWidth !== view.width || this.clientHeight !== view.height) {
      layout = set({ width: this.clientWidth, height: this.clientHeight });
    }
    this.layout = layout;
    if (before !== null && before.repeated !== layout.repeated) this.keepInPlace(before, layout);
    this.window.style.width = `${this.clientWidth}px`;
    this.window.style.height = `${this.clientHeight}px`;
    this.wake();
  }

  /** The chart stays where it was when rows of the repeat come in above it, or a few of them show. */
  private keepInPlace(before: SheetLayout, layout: SheetLayout): void {
    const above = this.scrollTop < 2 * before.cellHeight ? Math.min(4, layout.repeated) : 0;
    this.scrollTop += layout.top - before.top - above * layout.cellHeight;
  }

  // ---- places ----

  /** The place at a point of the page's window; may be beside the chart. */
  private placeAt(clientX: number, clientY: number): Place {
    const { left, top } = this.getBoundingClientRect();
    const x = clientX - left - this.clientLeft + this.scrollLeft;
    const y = clientY - top - this.clientTop + this.scrollTop;
    return this.layout?.placeAt(x, y) ?? { row: 0, column: 0 };
  }

  /** Goes to a knot without telling. */
  goTo(place: Place, { focus = false, reveal = true } = {}): void {
    const { chart } = this;
    if (chart === null) return;
    this.drawing.here = nearest(chart, place);
    this.setCell(focus);
    if (reveal) this.reveal();
    this.wake();
  }

  private setCell(focus: boolean): void {
    const { chart, marks, drawing, layout } = this;
    if (chart === null) return;
    const { here, selected } = drawing;
    const found = marks
      .filter(({ row, column }) => row === here.row && (column === null || column === here.column))
      .map(({ message }) => message);
    const words = {
      label: cellInWords(chart, here),
      about: [rowInWords(this.start, here.row), ...found].join(' '),
      selected: selected !== null && isIn(selected, here),
    };
    this.cursor.set(chart, here, words, focus);
    const scroll = { left: this.scrollLeft, top: this.scrollTop };
    if (layout !== null) this.cursor.place(layout, here, scroll);
  }

  private reveal(): void {
    const { layout } = this;
    if (layout === null) return;
    const { x, y, width, height } = layout.boxOf(this.drawing.here);
    const shift = (from: number, size: number, at: number, first: number, end: number): number => {
      if (from < at + first) return Math.max(0, from - first);
      return from + size > at + end ? from + size - end : at;
    };
    const beside = layout.gutter + width;
    this.scrollTo({
      left: shift(x, width, this.scrollLeft, beside, this.clientWidth - beside),
      top: shift(y, height, this.scrollTop, HEADER + height, this.clientHeight - 2 * height),
    });
  }

  private readonly onFocus = (): void => {
    this.reveal();
  };

  private readonly onBlur = (event: FocusEvent): void => {
    if (event.relatedTarget !== null) this.keys.onBlur();
  };

  private tellPlace(): void {
    this.dispatchEvent(new CustomEvent('draw-place'));
  }

  private ask(detail: SheetAsk): void {
    this.dispatchEvent(new CustomEvent<SheetAsk>('draw-ask', { detail }));
  }
}

/** Whether tiles of one chart can stand for another: its threads have the same colours. */
function sameThreads(one: Chart, other: Chart): boolean {
  if (one.colours === other.colours) return true;
  if (one.colours.length !== other.colours.length) return false;
  return one.colours.every(({ hex }, index) => hex === other.colours[index]?.hex);
}

function box(className: string): HTMLElement {
  const element = document.createElement('div');
  element.className = className;
  return element;
}

customElements.define('halfhitch-sheet', Sheet);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-sheet': Sheet;
  }
}
