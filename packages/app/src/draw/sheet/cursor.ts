import { type Box, setBox } from '../../view/box.js';
import type { Place, Size } from '../edit/place.js';

/** Smaller, it would not be found, px. */
const LEAST = 10;

export interface CursorWords {
  /** Said of the knot itself. */
  readonly label: string;
  /** Said after it: the way of its row, and what was found there. */
  readonly about: string;
  readonly selected: boolean;
}

/** Says where knots are. */
interface Boxes {
  boxOf(place: Place): Box;
}

/**
 * A grid with one cell, which moves: the knot that keys draw on, and what a screen reader says of
 * it. Lies over the canvas and is cut off where that ends.
 */
export class Cursor {
  readonly element = document.createElement('div');
  readonly grid = document.createElement('div');
  private readonly about = document.createElement('p');
  private cell: HTMLElement | null = null;
  /** What the cell says, so that it is not said again for nothing. */
  private shown = '';

  constructor(label = 'Knots of the chart') {
    this.element.className = 'sheet-pane';
    this.about.id = 'sheet-about';
    this.about.className = 'unseen';
    this.grid.setAttribute('role', 'grid');
    this.grid.setAttribute('aria-label', label);
    this.grid.setAttribute('aria-multiselectable', 'true');
    this.element.append(this.grid, this.about);
  }

  set({ rows, columns }: Size, { row, column }: Place, words: CursorWords, focus: boolean): void {
    this.about.textContent = words.about;
    this.grid.setAttribute('aria-rowcount', String(rows));
    this.grid.setAttribute('aria-colcount', String(columns));
    const key = JSON.stringify([row, column, words.label, words.selected]);
    if (key !== this.shown) {
      this.shown = key;
      this.renew({ row, column }, words);
    }
    if (focus) this.cell?.focus({ preventScroll: true });
  }

  /** A new element: a screen reader says what comes into focus, not what changes in it. */
  private renew({ row, column }: Place, words: CursorWords): void {
    const hadFocus = this.cell !== null && this.cell === document.activeElement;
    const line = document.createElement('div');
    line.setAttribute('role', 'row');
    line.setAttribute('aria-rowindex', String(row + 1));
    const cell = document.createElement('div');
    cell.className = 'sheet-cell';
    cell.setAttribute('role', 'gridcell');
    cell.setAttribute('aria-colindex', String(column + 1));
    cell.setAttribute('aria-selected', String(words.selected));
    cell.setAttribute('aria-label', words.label);
    cell.setAttribute('aria-describedby', this.about.id);
    cell.tabIndex = 0;
    line.append(cell);
    this.grid.replaceChildren(line);
    this.cell = cell;
    if (hadFocus) cell.focus({ preventScroll: true });
  }

  /** Puts it where its knot is in sight. */
  place(layout: Boxes, place: Place, scroll: { left: number; top: number }): void {
    const { cell } = this;
    if (cell === null) return;
    const { x, y, width, height } = layout.boxOf(place);
    const [wide, high] = [Math.max(LEAST, width), Math.max(LEAST, height)];
    setBox(cell, {
      x: x - scroll.left - (wide - width) / 2,
      y: y - scroll.top - (high - height) / 2,
      width: wide,
      height: high,
    });
  }
}
