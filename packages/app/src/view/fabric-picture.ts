import { fabricGeometry, KNOT_KINDS } from '@halfhitch/core';
import type { Tile } from '../work/fabric-tile.js';
import type { Piece } from '../work/messages.js';
import { type Box, setBox } from './box.js';
import { FabricTiles } from './fabric-tiles.js';
import { gridMove } from './grid-moves.js';

export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface PlaceDetail extends Place {
  /** Whether the knot was asked for, not just passed over on the way. */
  readonly chosen: boolean;
}

const MOST_MARKS = 200;
const ZOOMS = [0.5, 0.75, 1.1, 1.5, 2, 2.6] as const;

/**
 * At first a piece fills the width of its box between these sizes; one that is wider yet is begun
 * in a size in which a knot can be hit with a finger.
 */
const FILLING = { least: 0.5, most: 1.7, scrolled: 1.1 } as const;

/** The whole piece is shown at first where it leaves no less than this share of that size. */
const WHOLE = 0.75;

/** How far a knot's thread reaches out above its box, in heights of the box. */
const OVERHANG = 0.25;

/**
 * The knotted result as thread. Tiles of it are drawn only near what is in sight, so a piece of
 * ten thousand rows costs no more than a small one. A grid with one cell, which moves, makes
 * every knot reachable by keys and readable without sight.
 *
 * Fires `place` when another knot is gone to.
 */
export class FabricPicture extends HTMLElement {
  /** Draws a tile; gives an SVG document. */
  drawTile: (tile: Tile) => Promise<string> = async () => '';

  private piece: Piece | null = null;
  private place: Place = { row: 0, column: 0 };
  private scale = 1;
  private zoom: number | null = null;
  private readonly sheet = document.createElement('div');
  private readonly tiles = new FabricTiles(this.sheet, (tile) => this.drawTile(tile));
  private readonly veil = document.createElement('div');
  private readonly marks = document.createElement('div');
  private readonly grid = document.createElement('div');
  private cell: HTMLElement | null = null;
  private frame = 0;
  private sizes: ResizeObserver | null = null;

  connectedCallback(): void {
    this.className = 'fabric';
    this.sheet.className = 'fabric-sheet';
    this.veil.className = 'fabric-veils';
    this.marks.className = 'fabric-marks';
    this.grid.setAttribute('role', 'grid');
    this.grid.setAttribute('aria-label', 'Knots of the piece');
    this.sheet.append(this.veil, this.marks, this.grid);
    this.replaceChildren(this.sheet);
    this.addEventListener('scroll', this.wake, { passive: true });
    this.sheet.addEventListener('click', this.onClick);
    this.grid.addEventListener('keydown', this.onKey);
    this.sizes = new ResizeObserver(() => this.layOut());
    this.sizes.observe(this);
  }

  disconnectedCallback(): void {
    this.sizes?.disconnect();
    this.sizes = null;
    this.removeEventListener('scroll', this.wake);
    this.sheet.removeEventListener('click', this.onClick);
    this.grid.removeEventListener('keydown', this.onKey);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.tiles.clear();
  }

  /** Parts of the piece that are veiled, such as what is not tied yet. */
  set veiled(parts: readonly Tile[]) {
    this.veiledParts = parts;
    this.setVeil();
  }
  private veiledParts: readonly Tile[] = [];

  /** Shows a piece with a knot chosen in it. */
  show(piece: Piece, place: Place): void {
    const other = this.piece;
    const sameSize = other?.rows === piece.rows && other.columns === piece.columns;
    this.piece = piece;
    this.tiles.renew(piece);
    this.grid.setAttribute('aria-rowcount', String(piece.rows));
    this.grid.setAttribute('aria-colcount', String(piece.columns));
    if (!sameSize) {
      this.zoom = null;
      this.scrollTo(0, 0);
    }
    this.layOut();
    this.goTo(place, { focus: false, reveal: false });
  }

  /** Goes to a knot without telling. */
  goTo(place: Place, { focus = false, reveal = true } = {}): void {
    const { piece } = this;
    if (piece === null) return;
    this.place = {
      row: Math.max(0, Math.min(piece.rows - 1, place.row)),
      column: Math.max(0, Math.min(piece.columns - 1, place.column)),
    };
    this.setCell(focus);
    if (reveal) this.reveal();
  }

  zoomBy(way: 1 | -1): void {
    const next = this.nextZoom(way);
    if (next === null) return;
    this.zoom = next;
    this.layOut();
    this.reveal();
  }

  private nextZoom(way: 1 | -1): number | null {
    const now = this.scale;
    const fitting = ZOOMS.filter((zoom) => (way > 0 ? zoom > now + 0.01 : zoom < now - 0.01));
    return (way > 0 ? fitting[0] : fitting.at(-1)) ?? null;
  }

  // ---- the picture ----

  private layOut(): void {
    const { piece, sheet } = this;
    if (piece === null || this.clientWidth === 0) return;
    const geometry = fabricGeometry(piece.rows, piece.columns);
    const scale = this.zoom ?? this.fitting(geometry);
    this.scale = scale;
    sheet.style.width = `${(geometry.width * scale).toFixed(1)}px`;
    sheet.style.height = `${(geometry.height * scale).toFixed(1)}px`;
    this.tiles.setScale(scale);
    // The same one, so that whoever is in it stays there.
    if (this.cell !== null) setBox(this.cell, this.boxOf(this.place));
    this.setMarks();
    this.setVeil();
    this.wake();
  }

  /** The size at first: as wide as the box, and no higher where that costs little. */
  private fitting({ width, height }: { readonly width: number; readonly height: number }): number {
    const filling = Math.min(FILLING.most, (this.clientWidth - 2) / width);
    if (filling < FILLING.least) return FILLING.scrolled;
    const highest = Number.parseFloat(getComputedStyle(this).maxHeight);
    const whole = highest / height;
    // More than a scroll bar takes of the width, or it would come and go for ever.
    return whole >= WHOLE * Math.min(1, filling) ? Math.min(filling, whole) : filling;
  }

  private readonly wake = (): void => {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.drawInSight();
    });
  };

  private drawInSight(): void {
    if (this.piece === null || this.clientHeight === 0) return;
    this.tiles.show({
      left: this.scrollLeft,
      top: this.scrollTop,
      width: this.clientWidth,
      height: this.clientHeight,
    });
  }

  // ---- places ----

  private setCell(focus: boolean): void {
    const { piece, place } = this;
    if (piece === null) return;
    const hadFocus = this.cell !== null && this.cell === document.activeElement;
    // A new element each time: a screen reader says what comes into focus, not what changes in it.
    const row = document.createElement('div');
    row.setAttribute('role', 'row');
    row.setAttribute('aria-rowindex', String(place.row + 1));
    const cell = document.createElement('div');
    cell.className = 'fabric-cell';
    cell.setAttribute('role', 'gridcell');
    cell.setAttribute('aria-colindex', String(place.column + 1));
    cell.setAttribute('aria-selected', 'true');
    cell.setAttribute('aria-label', knotInWords(piece, place));
    cell.tabIndex = 0;
    setBox(cell, this.boxOf(place));
    row.append(cell);
    this.grid.replaceChildren(row);
    this.cell = cell;
    if (focus || hadFocus) cell.focus({ preventScroll: true });
  }

  private setMarks(): void {
    const { piece } = this;
    if (piece === null) return;
    const marks = piece.findings
      .flatMap(({ grade, row, column }) =>
        row === null || column === null ? [] : [{ grade, row: row - 1, column: column - 1 }],
      )
      .slice(0, MOST_MARKS)
      .map(({ grade, row, column }) => {
        const mark = document.createElement('div');
        mark.className = `fabric-mark ${grade}`;
        setBox(mark, this.boxOf({ row, column }));
        return mark;
      });
    this.marks.replaceChildren(...marks);
  }

  private setVeil(): void {
    const { piece, scale } = this;
    if (piece === null) return;
    const { rows, columns } = piece;
    const { width, height } = fabricGeometry(rows, columns);
    const veils = this.veiledParts.map(({ firstRow, endRow, firstColumn, endColumn }) => {
      const first = this.boxOf({ row: firstRow, column: firstColumn });
      const last = this.boxOf({ row: endRow - 1, column: endColumn - 1 });
      // With the turns and loose ends beside the knots.
      const left = firstColumn === 0 ? 0 : first.x;
      const right = endColumn >= columns ? width * scale : last.x + last.width;
      const top = first.y - (firstRow === 0 ? OVERHANG * first.height : 0);
      const below = endRow >= rows ? height * scale : last.y + last.height;
      const veil = document.createElement('div');
      veil.className = 'fabric-veil';
      setBox(veil, { x: left, y: top, width: right - left, height: below - top });
      return veil;
    });
    this.veil.replaceChildren(...veils);
  }

  private boxOf(place: Place): Box {
    const { piece, scale } = this;
    const geometry = fabricGeometry(piece?.rows ?? 1, piece?.columns ?? 1);
    const { x, y, width, height } = geometry.boxOf(place);
    return { x: x * scale, y: y * scale, width: width * scale, height: height * scale };
  }

  private reveal(): void {
    const { x, y, width, height } = this.boxOf(this.place);
    const marginX = Math.min(2 * width, this.clientWidth / 4);
    const marginY = Math.min(3 * height, this.clientHeight / 4);
    const shift = (from: number, size: number, at: number, sight: number, margin: number) =>
      from < at + margin
        ? Math.max(0, from - margin)
        : from + size > at + sight - margin
          ? from + size + margin - sight
          : at;
    this.scrollTo({
      left: shift(x, width, this.scrollLeft, this.clientWidth, marginX),
      top: shift(y, height, this.scrollTop, this.clientHeight, marginY),
    });
  }

  private tell(chosen: boolean): void {
    const detail: PlaceDetail = { ...this.place, chosen };
    this.dispatchEvent(new CustomEvent('place', { detail }));
  }

  private readonly onClick = (event: MouseEvent): void => {
    const { piece } = this;
    if (piece === null) return;
    const sheet = this.sheet.getBoundingClientRect();
    const found = fabricGeometry(piece.rows, piece.columns).knotAt(
      (event.clientX - sheet.left) / this.scale,
      (event.clientY - sheet.top) / this.scale,
    );
    if (found === null) return;
    this.goTo(found, { focus: true, reveal: false });
    this.tell(true);
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const { piece } = this;
    if (piece === null || event.altKey || event.metaKey) return;
    const { row, column } = this.place;
    const page = Math.max(1, Math.floor(this.clientHeight / this.boxOf(this.place).height) - 2);
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.tell(true);
      return;
    }
    const { rows, columns } = piece;
    const target = gridMove(event.key, { row, column }, { rows, columns, page }, event.ctrlKey);
    if (target === null) return;
    event.preventDefault();
    this.goTo(target, { focus: true });
    if (this.place.row !== row || this.place.column !== column) this.tell(false);
  };
}

/** "Row 3, column 5: forward knot on base string 5 in lake blue" */
export function knotInWords(piece: Piece, { row, column }: Place): string {
  const cell = row * piece.columns + column;
  const kind = KNOT_KINDS[piece.kinds[cell] ?? 255];
  const where = `Row ${row + 1}, column ${column + 1}`;
  const string = piece.strings[piece.tying[cell] ?? 0xffff];
  if (kind === undefined || string === undefined) return `${where}: no knot`;
  const colour = string.name === '' ? string.colour : string.name;
  return `${where}: ${kind} knot on base string ${column + 1} in ${colour}`;
}

customElements.define('halfhitch-fabric', FabricPicture);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-fabric': FabricPicture;
  }
}
