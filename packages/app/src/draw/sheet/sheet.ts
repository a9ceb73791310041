import type { Chart, StartSide } from '@halfhitch/core';
import type { Tile } from '../../work/fabric-tile.js';
import { isIn } from '../edit/area.js';
import { isInside, nearest, type Place } from '../edit/place.js';
import { NO_SYMMETRY } from '../edit/symmetry.js';
import { Cursor } from './cursor.js';
import { Drawing } from './drawing.js';
import type { SheetAsk, SheetEdit, SheetSettings } from './events.js';
import { Gestures } from './gestures.js';
import { Keys } from './keys.js';
import { SheetLayout, withinZoom } from './layout.js';
import type { Mark } from './marks.js';
import { SheetPainter } from './paint-sheet.js';
import { box, type Extent, type Frame, Sight } from './sight.js';
import { SignStamps } from './signs.js';
import { ThreadTiles } from './thread-tiles.js';
import { cellInWords, rowInWords } from './words.js';

/** Most rows of the repeat shown above and below, each. */
const MOST_REPEATED = 40;

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

  /** Where the hand is, in the page's window. */
  private hand: { readonly x: number; readonly y: number } | null = null;

  private readonly threads = box('sheet-threads');
  private readonly cursor = new Cursor();
  private readonly painter = new SheetPainter(new SignStamps());
  private readonly tiles = new ThreadTiles(this.threads, (tile) => this.drawTile(tile));

  /** What the tools do; the selection, and what can be done with it. */
  readonly drawing = new Drawing(AT_FIRST, {
    edit: (chart, what) => {
      if (chart === this.chart) return;
      this.dispatchEvent(new CustomEvent<SheetEdit>('draw-edit', { detail: { chart, what } }));
    },
    ask: (asked) => this.ask(asked),
    repaint: () => this.sight.wake(),
    placed: () => this.tellPlace(),
  });

  private readonly keys = this.keysOf();

  private readonly sight = this.sightOf();

  private readonly gestures = new Gestures(this.sight.window, {
    pushes: ({ button }) => button === 1 || this.settings.tool === 'view' || this.keys.pushes,
    begin: (x, y, event) => {
      const { chart } = this;
      if (chart === null) return;
      this.hand = { x, y };
      const place = this.sight.placeAt(x, y);
      if (isInside(chart, place)) this.goTo(place, { focus: true, reveal: false });
      this.drawing.begin(place, {
        extend: event.shiftKey,
        leave: event.ctrlKey || event.metaKey,
      });
    },
    move: (x, y) => {
      this.hand = { x, y };
      this.drawing.follow(this.sight.placeAt(x, y));
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
    zoomAt: (factor, x, y) => this.sight.zoomAt(factor, x, y),
  });

  private keysOf(): Keys {
    const sheet = this;
    return new Keys({
      drawing: this.drawing,
      get open() {
        return sheet.chart === null ? null : { chart: sheet.chart, colour: sheet.settings.colour };
      },
      get page() {
        return Math.max(
          1,
          Math.floor(sheet.clientHeight / (sheet.sight.layout?.cellHeight ?? 20)) - 3,
        );
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

  private sightOf(): Sight<SheetLayout> {
    const sheet = this;
    return new Sight(this, this.cursor, {
      get here() {
        return sheet.drawing.here;
      },
      layOut: (view, size) => this.layOut(view, size),
      withinSizes: withinZoom,
      paint: (ctx, layout, frame) => this.paint(ctx, layout, frame),
      scrolled: () => {
        const { hand, drawing } = this;
        if (drawing.isOn && hand !== null) drawing.follow(this.sight.placeAt(hand.x, hand.y));
      },
    });
  }

  connectedCallback(): void {
    this.sight.connect(this.threads);
    const { grid } = this.cursor;
    grid.addEventListener('keydown', this.keys.onDown);
    grid.addEventListener('keyup', this.keys.onUp);
    grid.addEventListener('focusout', this.onBlur);
    this.gestures.listen();
  }

  disconnectedCallback(): void {
    this.gestures.unlisten();
    const { grid } = this.cursor;
    grid.removeEventListener('keydown', this.keys.onDown);
    grid.removeEventListener('keyup', this.keys.onUp);
    grid.removeEventListener('focusout', this.onBlur);
    this.sight.disconnect();
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
    if (otherSize || otherAspect) this.layOutAnew();
    this.setCell(false);
    this.sight.wake();
  }

  /** Another chart altogether: seen from its first knot, in the size that suits it. */
  reset(): void {
    this.chart = null;
    this.drawing.take(null);
    this.sight.reset();
  }

  set(settings: SheetSettings): void {
    const before = this.settings;
    if (before === settings) return;
    this.settings = settings;
    if (before.tool !== settings.tool) this.gestures.drop();
    this.drawing.set(settings);
    if (before.repeat !== settings.repeat) this.layOutAnew();
    this.sight.window.dataset['tool'] = settings.tool;
    if (!settings.asThread) this.tiles.clear();
    this.sight.wake();
  }

  /** What was found, and in which chart; null while nothing is known of the chart. */
  found(marks: readonly Mark[], verified: Chart | null): void {
    if (this.marks === marks && this.verified === verified) return;
    if (this.verified !== verified) this.tiles.renew();
    this.marks = marks;
    this.verified = verified;
    this.setCell(false);
    this.sight.wake();
  }

  private paint(
    ctx: CanvasRenderingContext2D,
    layout: SheetLayout,
    { scroll, view, dpr, inks }: Frame,
  ): void {
    const { chart, settings } = this;
    if (chart === null) return;
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
      inks,
    });
    if (asThread) {
      const rows = layout.rowsIn(scroll.top - view.height / 2, scroll.top + 1.5 * view.height);
      this.tiles.show(layout, rows, layout.columnsIn(scroll.left, scroll.left + view.width));
    }
    this.threads.hidden = !asThread;
  }

  // ---- size ----

  zoomBy(way: 1 | -1): void {
    this.sight.zoomBy(way);
  }

  /** All columns in sight, where that leaves knots to be seen. */
  fit(): void {
    this.sight.fit();
  }

  private layOut(view: Extent, cellHeight: number | null): SheetLayout | null {
    const { chart, aspect } = this;
    if (chart === null) return null;
    const { rows, columns } = chart;
    const repeated = this.settings.repeat ? Math.min(rows, MOST_REPEATED) : 0;
    return new SheetLayout({ rows, columns, aspect, cellHeight, repeated, view });
  }

  /** The chart stays where it was when rows of the repeat come in above it, or a few of them show. */
  private layOutAnew(): void {
    const before = this.sight.layout;
    this.sight.layOut();
    const after = this.sight.layout;
    if (before === null || after === null || before.repeated === after.repeated) return;
    const above = this.scrollTop < 2 * before.cellHeight ? Math.min(4, after.repeated) : 0;
    this.scrollTop += after.top - before.top - above * after.cellHeight;
  }

  // ---- places ----

  /** Goes to a knot without telling. */
  goTo(place: Place, { focus = false, reveal = true } = {}): void {
    const { chart } = this;
    if (chart === null) return;
    this.drawing.here = nearest(chart, place);
    this.setCell(focus);
    if (reveal) this.sight.reveal();
    this.sight.wake();
  }

  private setCell(focus: boolean): void {
    const { chart, marks, drawing } = this;
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
    this.sight.placeCursor();
  }

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

customElements.define('halfhitch-sheet', Sheet);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-sheet': Sheet;
  }
}
