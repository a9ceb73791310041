import type { Chart } from '@halfhitch/core';
import { reasonOf } from '../../work/reason.js';
import { type Area, areaBetween, clipped, isIn, sameArea, wholeOf } from '../edit/area.js';
import { type Mirroring, mirrored } from '../edit/mirror.js';
import { emptied, type Patch, patchOf } from '../edit/patch.js';
import { isInside, nearest, type Place } from '../edit/place.js';
import { fillFrom } from '../edit/strokes.js';
import { copy, lastCopied } from '../tools/clipboard.js';
import { Lifting } from '../tools/lifting.js';
import { type DrawingTool, Stroke } from '../tools/stroke.js';
import type { SheetAsk, SheetSettings } from './events.js';
import { Moving } from './moving.js';
import { knotsInWords } from './words.js';

/** Whoever shows what is drawn. */
export interface DrawingHost {
  edit(chart: Chart, what: string): void;
  ask(asked: SheetAsk): void;
  /** Something that is seen has changed. */
  repaint(): void;
  /** The cursor or the selection has changed. */
  placed(): void;
}

type Doing =
  | { readonly by: 'stroke'; readonly stroke: Stroke }
  | { readonly by: 'tap'; readonly place: Place }
  | { readonly by: 'select'; readonly from: Place; readonly before: Area | null }
  | { readonly by: 'move'; readonly moving: Moving; result: Chart };

/** How a hand comes down. */
export interface Touchdown {
  /** Goes on from where selecting began. */
  readonly extend: boolean;
  /** Leaves what it moves where it was as well. */
  readonly leave: boolean;
}

const MIRRORING: Readonly<Record<Mirroring, string>> = {
  sides: 'Mirror left to right',
  ends: 'Mirror top to bottom',
  turn: 'Turn by half',
};

/** What the tools do to a chart, from when the hand or a key comes down until it is let go. */
export class Drawing {
  here: Place = { row: 0, column: 0 };
  selected: Area | null = null;
  private selectedFrom: Place | null = null;
  private doing: Doing | null = null;
  /** A line, frame or block begun by keys. */
  private begun: Stroke | null = null;
  private readonly lifting = new Lifting();
  private chart: Chart | null = null;

  constructor(
    private settings: SheetSettings,
    private readonly host: DrawingHost,
  ) {}

  /** Takes another chart, or the same one changed; what is being drawn on the old one is let go. */
  take(chart: Chart | null): void {
    if (chart === this.chart) return;
    this.chart = chart;
    this.doing = null;
    this.begun = null;
    if (chart === null) {
      this.selected = null;
      this.here = { row: 0, column: 0 };
      return;
    }
    this.here = nearest(chart, this.here);
    if (this.selected !== null && !isWithin(this.selected, chart)) {
      this.selected = clipped(this.selected, chart);
    }
  }

  set(settings: SheetSettings): void {
    const otherTool = settings.tool !== this.settings.tool;
    this.settings = settings;
    if (otherTool) this.drop();
  }

  /** Whether a hand is drawing. */
  get isOn(): boolean {
    return this.doing !== null;
  }

  /** The chart with what is being drawn, as far as it has come. */
  get inHand(): Chart | null {
    const { chart, doing } = this;
    if (chart === null) return null;
    if (doing?.by === 'move') return doing.result;
    const stroke = doing?.by === 'stroke' ? doing.stroke : this.begun;
    return stroke === null ? chart : { ...chart, cells: stroke.cells };
  }

  /** The selection, where it is being moved to. */
  get shownSelection(): Area | null {
    const { doing } = this;
    return doing?.by === 'move' ? doing.moving.shown : this.selected;
  }

  // ---- by hand ----

  begin(place: Place, { extend, leave }: Touchdown): void {
    const { chart } = this;
    if (chart === null) return;
    this.begun = null;
    const inside = isInside(chart, place);
    if (inside && extend && this.selectedFrom !== null) {
      this.select(areaBetween(this.selectedFrom, place));
      return;
    }
    this.doing = this.beginning(chart, place, inside, leave);
    this.host.placed();
    this.host.repaint();
  }

  private beginning(chart: Chart, place: Place, inside: boolean, leave: boolean): Doing | null {
    const { settings, selected } = this;
    switch (settings.tool) {
      case 'pencil':
      case 'line':
      case 'frame':
      case 'block':
        return { by: 'stroke', stroke: this.newStroke(chart, settings.tool, place) };
      case 'fill':
      case 'pick':
        return inside ? { by: 'tap', place } : null;
      case 'select': {
        if (selected !== null && isIn(selected, place)) {
          const moving = this.lift(chart, selected, place, leave);
          return { by: 'move', moving, result: chart };
        }
        const from = nearest(chart, place);
        this.selectedFrom = from;
        this.setSelection(inside ? areaBetween(from, from) : null);
        return { by: 'select', from, before: selected };
      }
      case 'view':
        return null;
    }
  }

  private newStroke(chart: Chart, tool: DrawingTool, place: Place): Stroke {
    const { colour, symmetry } = this.settings;
    return new Stroke(chart, tool, colour, symmetry, place);
  }

  private lift(chart: Chart, selection: Area, from: Place, leaves: boolean): Moving {
    const lifted = this.lifting.lift(chart, selection, this.settings.ground, leaves);
    return new Moving(lifted, selection, from, leaves);
  }

  follow(place: Place): void {
    const { doing, chart } = this;
    if (doing === null || chart === null) return;
    if (doing.by === 'stroke') {
      doing.stroke.moveTo(place);
    } else if (doing.by === 'select') {
      const area = areaBetween(doing.from, nearest(chart, place));
      if (sameArea(area, this.selected)) return;
      this.select(area);
    } else if (doing.by === 'move') {
      const { moving } = doing;
      if (!moving.follow(place)) return;
      // What was laid down last is told apart only once it is laid down.
      doing.result = this.attempt(() => moving.laidOn(chart)) ?? chart;
    }
    this.host.repaint();
  }

  finish(): void {
    const { doing } = this;
    this.doing = null;
    if (doing?.by === 'stroke') {
      const { chart, what } = doing.stroke.finish();
      this.host.edit(chart, what);
    } else if (doing?.by === 'tap') this.tap(doing.place);
    else if (doing?.by === 'move') this.layDown(doing.moving);
    this.host.repaint();
  }

  /** The stroke was not meant. */
  cancel(): void {
    if (this.doing?.by === 'select') this.setSelection(this.doing.before);
    this.doing = null;
    this.host.repaint();
  }

  /** Gives up whatever has been begun. @returns whether there was anything */
  drop(): boolean {
    const anything = this.doing !== null || this.begun !== null;
    this.begun = null;
    this.cancel();
    return anything;
  }

  private tap(place: Place): void {
    const { chart, settings } = this;
    if (chart === null) return;
    if (settings.tool === 'pick') {
      const colour = chart.cells[place.row * chart.columns + place.column] as number;
      this.host.ask({ ask: 'colour', colour });
      return;
    }
    this.host.edit(fillFrom(chart, place, settings.colour, settings.symmetry), 'Fill');
  }

  // ---- by keys ----

  /** What the tool does where the cursor is; a line, frame or block is begun, then ended. */
  drawHere(): void {
    const { chart, settings, here } = this;
    if (chart === null) return;
    const { tool } = settings;
    switch (tool) {
      case 'pencil': {
        const { chart: next, what } = this.newStroke(chart, tool, here).finish();
        this.host.edit(next, what);
        break;
      }
      case 'line':
      case 'frame':
      case 'block':
        this.beginOrEnd(chart, tool);
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

  private beginOrEnd(chart: Chart, tool: DrawingTool): void {
    const { begun, here } = this;
    if (begun === null) {
      this.begun = this.newStroke(chart, tool, here);
      this.say(
        `Begun at row ${here.row + 1}, column ${here.column + 1}. Go to the other end and press Enter; Escape gives it up.`,
      );
      this.host.repaint();
      return;
    }
    this.begun = null;
    begun.moveTo(here);
    const { chart: next, what } = begun.finish();
    this.host.edit(next, what);
  }

  /** Goes to a place by keys, with what was begun. @param extend whether the selection goes along */
  goTo(place: Place, extend: boolean): void {
    const { chart } = this;
    if (chart === null) return;
    const target = nearest(chart, place);
    if (extend) {
      if (this.selected === null || this.selectedFrom === null) this.selectedFrom = this.here;
      this.setSelection(areaBetween(this.selectedFrom, target));
    }
    this.here = target;
    this.begun?.moveTo(target);
  }

  // ---- the selection ----

  /** The selection, or the whole chart where nothing is selected. */
  get area(): Area | null {
    return this.selected ?? (this.chart === null ? null : wholeOf(this.chart));
  }

  select(area: Area | null): void {
    this.setSelection(area);
    this.host.placed();
  }

  selectAll(): void {
    if (this.chart !== null) this.select(wholeOf(this.chart));
  }

  private setSelection(area: Area | null): void {
    if (sameArea(this.selected, area)) return;
    this.selected = area;
    this.host.repaint();
  }

  mirror(way: Mirroring): void {
    const { chart, area } = this;
    if (chart === null || area === null) return;
    this.host.edit(mirrored(chart, way, area), MIRRORING[way]);
  }

  copySelection(): void {
    const { chart, selected } = this;
    if (chart === null || selected === null) {
      this.say('Nothing is selected. Mark out a rectangle with Select first.');
      return;
    }
    copy(patchOf(chart, selected));
    this.say(`Copied ${knotsInWords(selected)}.`);
  }

  cutSelection(): void {
    this.copySelection();
    this.empty('Cut the selection out');
  }

  empty(what = 'Empty the selection'): void {
    const { chart, selected, settings } = this;
    if (chart === null || selected === null) return;
    this.host.edit(emptied(chart, selected, settings.ground), what);
  }

  paste(): void {
    const patch = lastCopied();
    if (patch === null) this.say('Nothing has been copied yet.');
    else this.putIn(patch, 'Paste');
  }

  /** Lays a patch at the selection, or at the cursor where there is none, and selects it. */
  putIn(patch: Patch, what: string): void {
    const { chart } = this;
    if (chart === null) return;
    const { row, column } = this.selected ?? this.here;
    const at = { row, column };
    const { rows, columns } = patch;
    const selection = clipped({ row, column, rows, columns }, chart);
    if (selection === null) return;
    const next = this.attempt(() => this.lifting.lay(chart, { on: chart, patch, at }, selection));
    if (next === null) return;
    this.here = at;
    this.selectedFrom = at;
    this.setSelection(selection);
    this.host.edit(next, what);
    this.host.ask({ ask: 'tool', tool: 'select' });
    this.host.placed();
    if (selection.rows < rows || selection.columns < columns) {
      this.say('Part of it goes over the side of the chart and is left out.');
    }
  }

  /** Moves the selection by so many knots. @returns whether there is one */
  nudge(rows: number, columns: number): boolean {
    const { chart, selected } = this;
    if (chart === null || selected === null) return false;
    const moving = this.lift(chart, selected, selected, false);
    moving.moveBy(rows, columns);
    this.layDown(moving);
    return true;
  }

  /** Lays what was moved where it is, and selects it there. */
  private layDown(moving: Moving): void {
    const { chart } = this;
    if (chart === null || !moving.isMoved) return;
    const shown = clipped(moving.shown, chart);
    const next = this.attempt(() => moving.laidOn(chart, this.lifting));
    if (next === null) return;
    this.setSelection(shown);
    this.selectedFrom = shown;
    this.host.edit(next, moving.leaves ? 'Copy the selection' : 'Move the selection');
    this.host.placed();
  }

  private say(text: string): void {
    this.host.ask({ ask: 'say', text });
  }

  private attempt<T>(act: () => T): T | null {
    try {
      return act();
    } catch (error) {
      this.say(reasonOf(error));
      return null;
    }
  }
}

function isWithin(area: Area, chart: Chart): boolean {
  return sameArea(clipped(area, chart), area);
}
