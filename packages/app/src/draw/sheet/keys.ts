import type { Chart } from '@halfhitch/core';
import { gridMove } from '../../view/grid-moves.js';
import type { Place } from '../edit/place.js';
import { TOOLS } from '../tools/tools.js';
import type { Drawing } from './drawing.js';
import type { SheetAsk } from './events.js';

/** What keys do besides drawing. */
export interface KeyHost {
  readonly drawing: Drawing;
  /** The chart, and the colour that is drawn in; null before there is one. */
  readonly open: { readonly chart: Chart; readonly colour: number } | null;
  /** Rows that the keys for a page go. */
  readonly page: number;
  goTo(place: Place, extend: boolean): void;
  zoomBy(way: 1 | -1): void;
  ask(asked: SheetAsk): void;
}

/** Keys while the chart has the focus. */
export class Keys {
  /** The space bar draws when it is let go, unless the mouse has pushed the sheet meanwhile. */
  private space: 'up' | 'down' | 'pushed' = 'up';

  constructor(private readonly host: KeyHost) {}

  get pushes(): boolean {
    return this.space !== 'up';
  }

  pushed(): void {
    if (this.space === 'down') this.space = 'pushed';
  }

  readonly onDown = (event: KeyboardEvent): void => {
    const { open } = this.host;
    if (open === null || event.defaultPrevented) return;
    const ctrl = event.ctrlKey || event.metaKey;
    const done =
      this.arrow(event, open.chart) ||
      (ctrl ? this.chord(event) : !event.altKey && this.plain(event));
    if (done) event.preventDefault();
  };

  readonly onUp = (event: KeyboardEvent): void => {
    if (event.key !== ' ' || this.space === 'up') return;
    const pushed = this.space === 'pushed';
    this.space = 'up';
    event.preventDefault();
    if (!pushed) this.host.drawing.drawHere();
  };

  readonly onBlur = (): void => {
    this.space = 'up';
  };

  private chord(event: KeyboardEvent): boolean {
    const { drawing } = this.host;
    if (event.altKey || event.shiftKey) return false;
    switch (event.key.toLowerCase()) {
      case 'c':
        drawing.copySelection();
        return true;
      case 'x':
        drawing.cutSelection();
        return true;
      case 'v':
        drawing.paste();
        return true;
      case 'a':
        drawing.selectAll();
        return true;
      default:
        return false;
    }
  }

  private arrow(event: KeyboardEvent, chart: Chart): boolean {
    const { drawing, page } = this.host;
    const { row, column } = drawing.here;
    const { rows, columns } = chart;
    const ends = event.ctrlKey || event.metaKey;
    const target = gridMove(event.key, { row, column }, { rows, columns, page }, ends);
    if (target === null) return false;
    if (event.altKey) {
      if (!event.key.startsWith('Arrow')) return false;
      if (!drawing.nudge(target.row - row, target.column - column)) return false;
    }
    this.host.goTo(target, event.shiftKey && !event.altKey);
    return true;
  }

  private plain(event: KeyboardEvent): boolean {
    const { host } = this;
    const { key } = event;
    switch (key) {
      case ' ':
        if (!event.repeat) this.space = 'down';
        return true;
      case 'Enter':
        host.drawing.drawHere();
        return true;
      case 'Escape':
        if (host.drawing.drop()) return true;
        if (host.drawing.selected === null) return false;
        host.drawing.select(null);
        return true;
      case 'Delete':
      case 'Backspace':
        host.drawing.empty();
        return true;
      case '+':
      case '=':
        host.zoomBy(1);
        return true;
      case '-':
        host.zoomBy(-1);
        return true;
      default:
        return this.choice(key.toLowerCase());
    }
  }

  private choice(key: string): boolean {
    const { host } = this;
    const { chart, colour } = host.open ?? { chart: null, colour: 0 };
    const many = chart?.colours.length ?? 1;
    const tool = TOOLS.find((one) => one.key === key);
    if (tool !== undefined) host.ask({ ask: 'tool', tool: tool.name });
    else if (/^\d$/.test(key)) {
      const chosen = (Number(key) + 9) % 10;
      if (chosen < many) host.ask({ ask: 'colour', colour: chosen });
    } else if (key === '[') host.ask({ ask: 'colour', colour: (colour + many - 1) % many });
    else if (key === ']') host.ask({ ask: 'colour', colour: (colour + 1) % many });
    else if (key === 'h') host.ask({ ask: 'signs' });
    else return false;
    return true;
  }
}
