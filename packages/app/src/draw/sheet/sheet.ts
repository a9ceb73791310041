import { type Chart, directionOf, type StartSide } from '@halfhitch/core';
import type { Tile } from '../../work/fabric-tile.js';
import { type Area, areaBetween, clipped, isIn, sameArea, wholeOf } from '../edit/area.js';
import { colourName } from '../edit/colours.js';
import { mirrored } from '../edit/mirror.js';
import { emptied, type Patch, patchOf } from '../edit/patch.js';
import { isInside, nearest, type Place, samePlace } from '../edit/place.js';
import { fillFrom } from '../edit/strokes.js';
import { NO_SYMMETRY, type Symmetry } from '../edit/symmetry.js';
import { copy, lastCopied } from '../tools/clipboard.js';
import { ifChanged, Lifting } from '../tools/lifting.js';
import { type DrawingTool, Stroke } from '../tools/stroke.js';
import { TOOLS, type ToolName } from '../tools/tools.js';
import { Gestures, type HandMoves } from './gestures.js';
import { type Inks, inksOf } from './inks.js';
import { HEADER, SheetLayout, withinZoom, zoomed } from './layout.js';
import type { Mark } from './marks.js';
import { SheetPainter } from './paint-sheet.js';
import { SignStamps } from './signs.js';
import { ThreadTiles } from './thread-tiles.js';

/** What a sheet fires as `draw-edit`: the chart as it is now to be. */
export interface SheetEdit {
  readonly chart: Chart;
  readonly what: string;
}

/** What a sheet asks of the view, as `draw-ask`. */
export type SheetAsk =
  | { readonly ask: 'tool'; readonly tool: ToolName }
  /** By its place in the legend. */
  | { readonly ask: 'colour'; readonly colour: number }
  | { readonly ask: 'signs' }
  /** Something to be said. */
  | { readonly ask: 'say'; readonly text: string };

/** How the sheet shows the chart and what drawing does. */
export interface SheetSettings {
  readonly tool: ToolName;
  readonly colour: number;
  /** Colour that is left where something is taken away. */
  readonly ground: number;
  readonly symmetry: Symmetry;
  readonly signs: boolean;
  readonly asThread: boolean;
  readonly repeat: boolean;
}

/** Most rows of the repeat shown above and below, each. */
const MOST_REPEATED = 40;

type Doing =
  | { readonly by: 'stroke'; readonly stroke: Stroke }
  | { readonly by: 'tap'; readonly place: Place }
  | { readonly by: 'select'; readonly from: Place; readonly before: Area | null }
  | {
      readonly by: 'move';
      readonly from: Place;
      readonly selection: Area;
      readonly on: Chart;
      readonly patch: Patch;
      readonly at: Place;
      readonly leave: boolean;
      to: Place;
      result: Chart;
    };

/**
 * The chart to be drawn on, with its knots as wide and high as they come out. Only what is in
 * sight is painted, on a canvas that stays in place while the sheet is scrolled below it. A grid
 * with one cell, which moves, makes every knot reachable by keys and readable without sight.
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
  private marks: readonly Mark[] = [];
  private verified: Chart | null = null;
  private settings: SheetSettings = {
    tool: 'pencil',
    colour: 0,
    ground: 0,
    symmetry: NO_SYMMETRY,
    signs: false,
    asThread: false,
    repeat: false,
  };

  private here: Place = { row: 0, column: 0 };
  private selected: Area | null = null;
  private selectedFrom: Place | null = null;
  private doing: Doing | null = null;
  /** A line, frame or block begun by keys. */
  private begun: Stroke | null = null;
  private readonly lifting = new Lifting();

  private layout: SheetLayout | null = null;
  private cellHeight: number | null = null;
  private inks: Inks | null = null;
  private frame = 0;
  private spaceDown: 'no' | 'down' | 'pushed' = 'no';
  private lastPoint: { x: number; y: number } | null = null;

  private readonly painter = new SheetPainter(new SignStamps());
  private readonly extent = box('sheet-extent');
  private readonly threads = box('sheet-threads');
  private readonly window = box('sheet-frame');
  private readonly canvas = document.createElement('canvas');
  private readonly pane = box('sheet-pane');
  private readonly grid = box('sheet-grid');
  private readonly about = document.createElement('p');
  private cell: HTMLElement | null = null;
  private readonly tiles = new ThreadTiles(this.threads, (tile) => this.drawTile(tile));
  private sizes: ResizeObserver | null = null;
  private readonly themes = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(
    (query) => matchMedia(query),
  );

  connectedCallback(): void {
    this.classList.add('sheet');
    this.canvas.className = 'sheet-canvas';
    this.canvas.setAttribute('aria-hidden', 'true');
    this.about.id = 'sheet-about';
    this.about.className = 'unseen';
    this.grid.setAttribute('role', 'grid');
    this.grid.setAttribute('aria-label', 'Knots of the chart');
    this.grid.setAttribute('aria-multiselectable', 'true');
    this.pane.append(this.grid);
    this.window.append(this.canvas, this.pane, this.about);
    this.extent.append(this.threads, this.window);
    this.replaceChildren(this.extent);
    this.addEventListener('scroll', this.onScroll, { passive: true });
    this.grid.addEventListener('keydown', this.onKey);
    this.grid.addEventListener('keyup', this.onKeyUp);
    this.grid.addEventListener('focusin', this.onFocus);
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
    this.grid.removeEventListener('keydown', this.onKey);
    this.grid.removeEventListener('keyup', this.onKeyUp);
    this.grid.removeEventListener('focusin', this.onFocus);
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
    this.chart = chart;
    this.start = start;
    if (chart !== before) {
      this.gestures.drop();
      this.begun = null;
    }
    if (before === null) {
      this.cellHeight = null;
      this.here = { row: 0, column: 0 };
    }
    if (otherSize) {
      this.here = nearest(chart, this.here);
      if (this.selected !== null) this.selected = clipped(this.selected, chart);
    }
    if (otherSize || aspect !== this.aspect) {
      this.aspect = aspect;
      this.layOut();
    }
    this.setCell(false);
    this.wake();
  }

  /** Another chart altogether: seen from its first knot, in the size that suits it. */
  reset(): void {
    this.chart = null;
    this.selected = null;
    this.scrollTo(0, 0);
  }

  set(settings: SheetSettings): void {
    const before = this.settings;
    if (before === settings) return;
    this.settings = settings;
    if (before.tool !== settings.tool) this.drop();
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

  get place(): Place {
    return this.here;
  }

  get selection(): Area | null {
    return this.selected;
  }

  /** The selection, or the whole chart where nothing is selected. */
  get area(): Area | null {
    return this.selected ?? (this.chart === null ? null : wholeOf(this.chart));
  }

  select(area: Area | null): void {
    this.setSelection(area);
    this.tellPlace();
  }

  // ---- size ----

  zoomBy(way: 1 | -1): void {
    if (this.layout === null) return;
    const { left, top } = this.getBoundingClientRect();
    const { x, y, width, height } = this.layout.boxOf(this.here);
    const inSight = (at: number, size: number): number => (at > 0 && at < size ? at : size / 2);
    this.zoomAt(
      zoomed(this.layout.cellHeight, way) / this.layout.cellHeight,
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
    const { layout } = this;
    if (layout === null) return;
    const next = withinZoom(layout.cellHeight * factor);
    if (next === layout.cellHeight) return;
    const { left, top } = this.getBoundingClientRect();
    const [x, y] = [clientX - left, clientY - top];
    const across = (x + this.scrollLeft - layout.left) / layout.cellWidth;
    const down = (y + this.scrollTop - layout.top) / layout.cellHeight;
    this.cellHeight = next;
    this.layOut();
    const after = this.layout;
    if (after === null) return;
    this.scrollTo(
      after.left + across * after.cellWidth - x,
      after.top + down * after.cellHeight - y,
    );
  }

  private layOut(): void {
    const { chart } = this;
    if (chart === null || this.clientWidth === 0) return;
    const wish = {
      rows: chart.rows,
      columns: chart.columns,
      aspect: this.aspect,
      cellHeight: this.cellHeight,
      repeated: this.settings.repeat ? Math.min(chart.rows, MOST_REPEATED) : 0,
    };
    const before = this.layout;
    const set = (view: { width: number; height: number }): SheetLayout => {
      const layout = new SheetLayout({ ...wish, view });
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

  private readonly onTheme = (): void => {
    this.inks = null;
    this.wake();
  };

  private readonly onScroll = (): void => {
    const { lastPoint } = this;
    if (this.doing !== null && lastPoint !== null) this.moves.move(lastPoint.x, lastPoint.y);
    this.wake();
  };

  private wake(): void {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.paint();
    });
  }

  private paint(): void {
    const { chart, layout, canvas, settings } = this;
    if (chart === null || layout === null || this.clientHeight === 0) return;
    const ctx = canvas.getContext('2d');
    if (ctx === null) return;
    const dpr = Math.max(1, Math.min(3, devicePixelRatio));
    const view = { width: this.clientWidth, height: this.clientHeight };
    const scroll = { left: this.scrollLeft, top: this.scrollTop };
    const width = Math.round(view.width * dpr);
    const height = Math.round(view.height * dpr);
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
    }
    this.inks ??= inksOf(this);
    const shown = this.inHand ?? chart;
    const { verified } = this;
    const fits = verified?.rows === chart.rows && verified.columns === chart.columns;
    const asThread =
      settings.asThread && fits && sameThreads(verified, shown) ? verified.cells : null;
    const { doing } = this;
    this.painter.paint(ctx, {
      layout,
      colours: shown.colours,
      cells: shown.cells,
      start: this.start,
      scroll,
      view,
      dpr,
      signs: settings.signs,
      asThread,
      symmetry: settings.symmetry,
      marks: fits ? this.marks : [],
      selection: doing?.by === 'move' ? { ...doing.selection, ...doing.to } : this.selected,
      here: this.here,
      inks: this.inks,
    });
    if (asThread !== null) {
      this.tiles.show(
        layout,
        layout.rowsIn(scroll.top - view.height / 2, scroll.top + 1.5 * view.height),
        layout.columnsIn(scroll.left, scroll.left + view.width),
      );
    }
    this.threads.hidden = asThread === null;
    this.placeCell();
    canvas.dataset['painted'] = String(Number(canvas.dataset['painted'] ?? 0) + 1);
  }

  /** The chart with what is being drawn, as far as it has come. */
  private get inHand(): Chart | null {
    const { chart, doing } = this;
    if (chart === null) return null;
    if (doing?.by === 'stroke') return { ...chart, cells: doing.stroke.cells };
    if (doing?.by === 'move') return doing.result;
    return this.begun === null ? null : { ...chart, cells: this.begun.cells };
  }

  // ---- the cursor ----

  /** Goes to a knot without telling. */
  goTo(place: Place, { focus = false, reveal = true } = {}): void {
    const { chart } = this;
    if (chart === null) return;
    this.here = nearest(chart, place);
    this.setCell(focus);
    if (reveal) this.reveal();
    this.wake();
  }

  private setCell(focus: boolean): void {
    const { chart, here } = this;
    if (chart === null) return;
    const hadFocus = this.cell !== null && this.cell === document.activeElement;
    this.grid.setAttribute('aria-rowcount', String(chart.rows));
    this.grid.setAttribute('aria-colcount', String(chart.columns));
    // A new element each time: a screen reader says what comes into focus, not what changes in it.
    const row = box('');
    row.setAttribute('role', 'row');
    row.setAttribute('aria-rowindex', String(here.row + 1));
    const cell = box('sheet-cell');
    cell.setAttribute('role', 'gridcell');
    cell.setAttribute('aria-colindex', String(here.column + 1));
    const selected = this.selected !== null && isIn(this.selected, here);
    cell.setAttribute('aria-selected', String(selected));
    cell.setAttribute('aria-label', cellInWords(chart, here));
    cell.setAttribute('aria-describedby', this.about.id);
    cell.tabIndex = 0;
    row.append(cell);
    this.about.textContent = this.aboutHere();
    this.grid.replaceChildren(row);
    this.cell = cell;
    this.placeCell();
    if (focus || hadFocus) cell.focus({ preventScroll: true });
  }

  private aboutHere(): string {
    const { here, start } = this;
    const found = this.marks
      .filter(({ row, column }) => row === here.row && (column === null || column === here.column))
      .map(({ message }) => message);
    return [rowInWords(start, here.row), ...found].join(' ');
  }

  private placeCell(): void {
    const { layout, cell } = this;
    if (layout === null || cell === null) return;
    const { x, y, width, height } = layout.boxOf(this.here);
    cell.style.left = `${x - this.scrollLeft}px`;
    cell.style.top = `${y - this.scrollTop}px`;
    cell.style.width = `${width}px`;
    cell.style.height = `${height}px`;
  }

  private reveal(): void {
    const { layout } = this;
    if (layout === null) return;
    const { x, y, width, height } = layout.boxOf(this.here);
    const shift = (from: number, size: number, at: number, before: number, end: number): number => {
      if (from < at + before) return Math.max(0, from - before);
      return from + size > at + end ? from + size - end : at;
    };
    this.scrollTo({
      left: shift(
        x,
        width,
        this.scrollLeft,
        layout.gutter + width,
        this.clientWidth - layout.gutter - width,
      ),
      top: shift(y, height, this.scrollTop, HEADER + height, this.clientHeight - 2 * height),
    });
  }

  private readonly onFocus = (): void => {
    this.reveal();
  };

  private setSelection(area: Area | null): void {
    if (sameArea(this.selected, area)) return;
    this.selected = area;
    this.wake();
  }

  private tellPlace(): void {
    this.dispatchEvent(new CustomEvent('draw-place'));
  }

  private ask(detail: SheetAsk): void {
    this.dispatchEvent(new CustomEvent<SheetAsk>('draw-ask', { detail }));
  }

  private edit(chart: Chart, what: string): void {
    if (this.chart === null) return;
    if (chart === this.chart) {
      this.wake();
      return;
    }
    this.dispatchEvent(new CustomEvent<SheetEdit>('draw-edit', { detail: { chart, what } }));
  }

  // ---- drawing by hand ----

  private placeAt(clientX: number, clientY: number): Place {
    const { left, top } = this.getBoundingClientRect();
    const place = this.layout?.placeAt(
      clientX - left - this.clientLeft + this.scrollLeft,
      clientY - top - this.clientTop + this.scrollTop,
    );
    return place ?? { row: 0, column: 0 };
  }

  private readonly moves: HandMoves = {
    pushes: (event) =>
      event.button === 1 || this.settings.tool === 'view' || this.spaceDown !== 'no',
    begin: (x, y, event) => {
      const { chart, settings } = this;
      if (chart === null) return;
      this.lastPoint = { x, y };
      const place = this.placeAt(x, y);
      const inside = isInside(chart, place);
      this.begun = null;
      if (inside) {
        this.goTo(place, { focus: true, reveal: false });
        if (event.shiftKey && this.selectedFrom !== null) {
          this.setSelection(areaBetween(this.selectedFrom, place));
          this.tellPlace();
          return;
        }
      }
      this.doing = this.beginning(settings.tool, place, event, inside);
      this.tellPlace();
      this.wake();
    },
    move: (x, y) => {
      this.lastPoint = { x, y };
      this.follow(this.placeAt(x, y));
    },
    end: () => {
      this.lastPoint = null;
      const { doing } = this;
      this.doing = null;
      if (doing !== null) this.finish(doing);
      this.wake();
    },
    cancel: () => {
      this.lastPoint = null;
      if (this.doing?.by === 'select') this.setSelection(this.doing.before);
      this.doing = null;
      this.wake();
    },
    pushBy: (x, y) => {
      if (this.spaceDown === 'down') this.spaceDown = 'pushed';
      this.scrollBy(-x, -y);
    },
    zoomAt: (factor, x, y) => this.zoomAt(factor, x, y),
  };

  private readonly gestures = new Gestures(this.window, this.moves);

  private beginning(
    tool: ToolName,
    place: Place,
    event: PointerEvent,
    inside: boolean,
  ): Doing | null {
    const { chart, settings, selected } = this;
    if (chart === null) return null;
    switch (tool) {
      case 'pencil':
      case 'line':
      case 'frame':
      case 'block':
        return { by: 'stroke', stroke: this.newStroke(chart, tool, place) };
      case 'fill':
      case 'pick':
        return inside ? { by: 'tap', place } : null;
      case 'select': {
        if (selected !== null && isIn(selected, place)) {
          const leave = event.ctrlKey || event.metaKey;
          const lifted = this.lifting.lift(chart, selected, settings.ground, leave);
          return {
            by: 'move',
            from: place,
            selection: selected,
            ...lifted,
            leave,
            to: selected,
            result: chart,
          };
        }
        const before = this.selected;
        const from = nearest(chart, place);
        this.selectedFrom = from;
        this.setSelection(inside ? areaBetween(from, from) : null);
        return { by: 'select', from, before };
      }
      case 'view':
        return null;
    }
  }

  private newStroke(chart: Chart, tool: DrawingTool, place: Place): Stroke {
    const { colour, symmetry } = this.settings;
    return new Stroke(chart, tool, colour, symmetry, place);
  }

  private follow(place: Place): void {
    const { doing, chart } = this;
    if (doing === null || chart === null) return;
    switch (doing.by) {
      case 'stroke':
        doing.stroke.moveTo(place);
        this.wake();
        break;
      case 'select': {
        const area = areaBetween(doing.from, nearest(chart, place));
        if (sameArea(area, this.selected)) return;
        this.setSelection(area);
        this.tellPlace();
        break;
      }
      case 'move': {
        const { selection, from, at } = doing;
        const to = {
          row: selection.row + place.row - from.row,
          column: selection.column + place.column - from.column,
        };
        if (samePlace(to, doing.to)) return;
        doing.to = to;
        const laid = {
          row: at.row + to.row - selection.row,
          column: at.column + to.column - selection.column,
        };
        doing.result =
          this.attempt(() => new Lifting().lay(doing.on, doing.patch, laid, selection)) ?? chart;
        this.wake();
        break;
      }
      case 'tap':
        break;
    }
  }

  private finish(doing: Doing): void {
    const { chart } = this;
    if (chart === null) return;
    switch (doing.by) {
      case 'stroke': {
        const { chart: next, what } = doing.stroke.finish();
        this.edit(next, what);
        break;
      }
      case 'tap':
        this.tap(doing.place);
        break;
      case 'select':
        this.tellPlace();
        break;
      case 'move':
        this.layDown(doing);
        break;
    }
  }

  /** Lays what was moved where it is, and selects it there. */
  private layDown({ on, patch, at, selection, to, leave }: Extract<Doing, { by: 'move' }>): void {
    const { chart } = this;
    if (chart === null || samePlace(to, selection)) return;
    const shown = clipped({ ...selection, row: to.row, column: to.column }, chart);
    const area = shown ?? selection;
    const laid = {
      row: at.row + to.row - selection.row,
      column: at.column + to.column - selection.column,
    };
    const next = this.attempt(() => this.lifting.lay(on, patch, laid, area));
    if (next === null) return;
    this.setSelection(shown);
    this.selectedFrom = shown;
    this.edit(this.kept(next), leave ? 'Copy the selection' : 'Move the selection');
    this.tellPlace();
  }

  /** The result of lifting, which must stay the very one to be known again. */
  private kept(next: Chart): Chart {
    const { chart } = this;
    return chart !== null && ifChanged(chart, next) === chart ? chart : next;
  }

  private tap(place: Place): void {
    const { chart, settings } = this;
    if (chart === null) return;
    if (settings.tool === 'pick') {
      this.ask({
        ask: 'colour',
        colour: chart.cells[place.row * chart.columns + place.column] as number,
      });
      return;
    }
    this.edit(fillFrom(chart, place, settings.colour, settings.symmetry), 'Fill');
  }

  /** Gives up whatever has been begun. */
  private drop(): void {
    this.gestures.drop();
    this.begun = null;
    this.wake();
  }

  private attempt<T>(act: () => T): T | null {
    try {
      return act();
    } catch (error) {
      this.ask({ ask: 'say', text: error instanceof Error ? error.message : String(error) });
      return null;
    }
  }

  // ---- what is done with a selection ----

  copySelection(): void {
    const { chart, selected } = this;
    if (chart === null || selected === null) {
      this.ask({
        ask: 'say',
        text: 'Nothing is selected. Mark out a rectangle with Select first.',
      });
      return;
    }
    copy(patchOf(chart, selected));
    const { rows, columns } = selected;
    this.ask({ ask: 'say', text: `Copied ${knots(rows, columns)}.` });
  }

  cutSelection(): void {
    const { chart, selected } = this;
    this.copySelection();
    if (chart !== null && selected !== null) this.empty('Cut the selection out');
  }

  empty(what = 'Empty the selection'): void {
    const { chart, selected, settings } = this;
    if (chart === null || selected === null) return;
    this.edit(emptied(chart, selected, settings.ground), what);
  }

  paste(): void {
    const patch = lastCopied();
    if (patch === null) {
      this.ask({ ask: 'say', text: 'Nothing has been copied yet.' });
      return;
    }
    this.putIn(patch, 'Paste');
  }

  /** Lays a patch at the selection, or at the cursor where there is none, and selects it. */
  putIn(patch: Patch, what: string): void {
    const { chart } = this;
    if (chart === null) return;
    const at = this.selected ?? this.here;
    const area = clipped({ ...patch, row: at.row, column: at.column }, chart);
    if (area === null) return;
    const { row, column, rows, columns } = area;
    const selection = { row, column, rows, columns };
    const next = this.attempt(() => this.lifting.lay(chart, patch, { row, column }, selection));
    if (next === null) return;
    this.here = { row, column };
    this.selectedFrom = this.here;
    this.setSelection(selection);
    this.edit(this.kept(next), what);
    this.ask({ ask: 'tool', tool: 'select' });
    this.tellPlace();
    if (area.rows < patch.rows || area.columns < patch.columns) {
      this.ask({ ask: 'say', text: 'Part of it goes over the side of the chart and is left out.' });
    }
  }

  mirror(way: 'sides' | 'ends' | 'turn'): void {
    const { chart, selected } = this;
    if (chart === null) return;
    const what = {
      sides: 'Mirror left to right',
      ends: 'Mirror top to bottom',
      turn: 'Turn by half',
    };
    this.edit(mirrored(chart, way, selected ?? wholeOf(chart)), what[way]);
  }

  private nudge(row: number, column: number): void {
    const { chart, selected, settings } = this;
    if (chart === null || selected === null) return;
    const lifted = this.lifting.lift(chart, selected, settings.ground, false);
    const to = { row: selected.row + row, column: selected.column + column };
    this.layDown({
      by: 'move',
      from: selected,
      selection: selected,
      ...lifted,
      leave: false,
      to,
      result: chart,
    });
    this.goTo({ row: this.here.row + row, column: this.here.column + column });
  }

  // ---- drawing by keys ----

  private readonly onKey = (event: KeyboardEvent): void => {
    const { chart } = this;
    if (chart === null || event.defaultPrevented) return;
    const done =
      event.ctrlKey || event.metaKey ? this.chord(event) : this.arrow(event) || this.stroke(event);
    if (done) event.preventDefault();
  };

  private chord(event: KeyboardEvent): boolean {
    const { chart } = this;
    if (chart === null || event.altKey || event.shiftKey) return false;
    switch (event.key) {
      case 'c':
        this.copySelection();
        return true;
      case 'x':
        this.cutSelection();
        return true;
      case 'v':
        this.paste();
        return true;
      case 'a':
        this.select(wholeOf(chart));
        return true;
      default:
        return this.arrow(event);
    }
  }

  private arrow(event: KeyboardEvent): boolean {
    const { chart, layout, here } = this;
    if (chart === null || layout === null) return false;
    const ends = event.ctrlKey || event.metaKey;
    const { row, column } = here;
    const page = Math.max(1, Math.floor(this.clientHeight / layout.cellHeight) - 3);
    const moves: Record<string, Place> = {
      ArrowLeft: { row, column: column - 1 },
      ArrowRight: { row, column: column + 1 },
      ArrowUp: { row: row - 1, column },
      ArrowDown: { row: row + 1, column },
      PageUp: { row: row - page, column },
      PageDown: { row: row + page, column },
      Home: { row: ends ? 0 : row, column: 0 },
      End: { row: ends ? chart.rows - 1 : row, column: chart.columns - 1 },
    };
    const target = moves[event.key];
    if (target === undefined || (ends && !['Home', 'End'].includes(event.key))) return false;
    if (event.altKey) {
      if (!event.key.startsWith('Arrow')) return false;
      this.nudge(target.row - row, target.column - column);
      return true;
    }
    if (event.shiftKey) {
      if (this.selected === null || this.selectedFrom === null) this.selectedFrom = here;
      this.setSelection(areaBetween(this.selectedFrom ?? here, nearest(chart, target)));
    }
    this.goTo(target, { focus: true });
    this.begun?.moveTo(this.here);
    this.tellPlace();
    return true;
  }

  private stroke(event: KeyboardEvent): boolean {
    if (event.altKey) return false;
    const { key } = event;
    if (key === ' ') {
      // Drawn when it is let go, since with the mouse it pushes the sheet.
      if (!event.repeat) this.spaceDown = 'down';
      return true;
    }
    if (key === 'Enter') {
      this.drawHere();
      return true;
    }
    if (key === 'Escape') {
      if (this.doing === null && this.begun === null && this.selected === null) return false;
      const selecting = this.doing === null && this.begun === null;
      this.drop();
      if (selecting) this.select(null);
      return true;
    }
    if (key === 'Delete' || key === 'Backspace') {
      this.empty();
      return true;
    }
    if (key === '+' || key === '=') this.zoomBy(1);
    else if (key === '-') this.zoomBy(-1);
    else return this.choice(key);
    return true;
  }

  private choice(key: string): boolean {
    const { settings } = this;
    const many = this.chart?.colours.length ?? 1;
    const tool = TOOLS.find((one) => one.key === key.toLowerCase());
    if (tool !== undefined) {
      this.ask({ ask: 'tool', tool: tool.name });
      return true;
    }
    if (/^\d$/.test(key)) {
      const colour = (Number(key) + 9) % 10;
      if (colour < many) this.ask({ ask: 'colour', colour });
      return true;
    }
    if (key === '[' || key === ']') {
      const step = key === '[' ? many - 1 : 1;
      this.ask({ ask: 'colour', colour: (settings.colour + step) % many });
      return true;
    }
    if (key.toLowerCase() !== 'h') return false;
    this.ask({ ask: 'signs' });
    return true;
  }

  private readonly onKeyUp = (event: KeyboardEvent): void => {
    if (event.key !== ' ' || this.spaceDown === 'no') return;
    const pushed = this.spaceDown === 'pushed';
    this.spaceDown = 'no';
    event.preventDefault();
    if (!pushed) this.drawHere();
  };

  /** What the tool does where the cursor is; a line, frame or block is begun, then ended. */
  private drawHere(): void {
    const { chart, settings, here } = this;
    if (chart === null) return;
    const { tool } = settings;
    switch (tool) {
      case 'pencil': {
        const { chart: next, what } = this.newStroke(chart, tool, here).finish();
        this.edit(next, what);
        break;
      }
      case 'line':
      case 'frame':
      case 'block':
        if (this.begun === null) {
          this.begun = this.newStroke(chart, tool, here);
          this.ask({
            ask: 'say',
            text: `Begun at row ${here.row + 1}, column ${here.column + 1}. Go to the other end and press Enter; Escape gives it up.`,
          });
          this.wake();
          break;
        }
        this.begun.moveTo(here);
        {
          const { chart: next, what } = this.begun.finish();
          this.begun = null;
          this.edit(next, what);
        }
        break;
      case 'fill':
      case 'pick':
        this.tap(here);
        break;
      case 'select':
        this.selectedFrom = here;
        this.select(areaBetween(here, here));
        break;
      case 'view':
        break;
    }
  }
}

/** Whether tiles of one chart can stand for another: its threads have the same colours. */
function sameThreads(one: Chart, other: Chart): boolean {
  return (
    one.colours === other.colours ||
    (one.colours.length === other.colours.length &&
      one.colours.every(({ hex }, index) => hex === other.colours[index]?.hex))
  );
}

/** "Row 3, column 5: buoy orange" */
export function cellInWords(chart: Chart, { row, column }: Place): string {
  const colour = chart.colours[chart.cells[row * chart.columns + column] as number];
  const name = colour === undefined ? 'no colour' : colourName(colour);
  return `Row ${row + 1}, column ${column + 1}: ${name}`;
}

/** "Row 3 is knotted from left to right." */
export function rowInWords(start: StartSide, row: number): string {
  const way = directionOf(start, row) === 'right' ? 'left to right' : 'right to left';
  return `Row ${row + 1} is knotted from ${way}.`;
}

function knots(rows: number, columns: number): string {
  const many = rows * columns;
  return `${many.toLocaleString('en-GB')} ${many === 1 ? 'knot' : 'knots'}`;
}

function box(className: string): HTMLElement {
  const element = document.createElement('div');
  if (className !== '') element.className = className;
  return element;
}

customElements.define('halfhitch-sheet', Sheet);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-sheet': Sheet;
  }
}
