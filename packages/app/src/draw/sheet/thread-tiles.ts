import { fabricGeometry } from '@halfhitch/core';
import { setBox } from '../../view/box.js';
import { type Tile, tileBox } from '../../work/fabric-tile.js';
import type { SheetLayout } from './layout.js';

/** Knots across and down in a tile: few enough that a tile is drawn without a pause. */
const TILE = { columns: 40, rows: 14 } as const;

interface Shown {
  readonly image: HTMLImageElement;
  readonly tile: Tile;
  /** Of which piece the picture is; older ones are shown until theirs has come. */
  issue: number;
}

/**
 * The knotted piece as thread below the drawing, in tiles. As the core draws it, but stretched to
 * the knots of the sheet.
 */
export class ThreadTiles {
  private readonly tiles = new Map<string, Shown>();
  private issue = 0;
  private layout: SheetLayout | null = null;

  constructor(
    private readonly ground: HTMLElement,
    private readonly draw: (tile: Tile) => Promise<string>,
  ) {}

  /** Another piece is there to be drawn. */
  renew(): void {
    this.issue++;
  }

  clear(): void {
    for (const [key, shown] of this.tiles) this.drop(key, shown);
  }

  /** Shows what is in sight, rows and columns from 0, the ends not included. */
  show(
    layout: SheetLayout,
    rows: { readonly first: number; readonly end: number },
    columns: { readonly first: number; readonly end: number },
  ): void {
    const moved = this.layout !== layout;
    this.layout = layout;
    const wanted = new Map<string, Tile>();
    const first = Math.max(0, rows.first);
    const end = Math.min(layout.rows, rows.end);
    for (let y = Math.floor(first / TILE.rows); y * TILE.rows < end; y++) {
      for (let x = Math.floor(columns.first / TILE.columns); x * TILE.columns < columns.end; x++) {
        wanted.set(`${x} ${y}`, {
          firstRow: y * TILE.rows,
          endRow: Math.min(layout.rows, (y + 1) * TILE.rows),
          firstColumn: x * TILE.columns,
          endColumn: Math.min(layout.columns, (x + 1) * TILE.columns),
        });
      }
    }
    for (const [key, shown] of this.tiles) {
      const tile = wanted.get(key);
      const same = tile?.endRow === shown.tile.endRow && tile.endColumn === shown.tile.endColumn;
      if (!same) this.drop(key, shown);
      else if (moved) this.place(shown);
    }
    for (const [key, tile] of wanted) void this.ask(key, tile);
  }

  private async ask(key: string, tile: Tile): Promise<void> {
    const { issue } = this;
    let shown = this.tiles.get(key);
    if (shown?.issue === issue) return;
    if (shown === undefined) {
      const image = document.createElement('img');
      image.alt = '';
      image.draggable = false;
      shown = { image, tile, issue };
      this.tiles.set(key, shown);
      this.place(shown);
    }
    shown.issue = issue;
    try {
      const picture = await this.draw(tile);
      if (this.tiles.get(key) !== shown || shown.issue !== issue) return;
      // Else the browser would keep the picture's own proportions.
      const stretched = picture.replace('<svg ', '<svg preserveAspectRatio="none" ');
      const before = shown.image.src;
      shown.image.src = URL.createObjectURL(new Blob([stretched], { type: 'image/svg+xml' }));
      this.ground.append(shown.image);
      if (before !== '') URL.revokeObjectURL(before);
    } catch {
      // Asked for again when the sheet is next painted.
      if (shown.issue === issue) shown.issue = -1;
    }
  }

  private place({ image, tile }: Shown): void {
    const { layout } = this;
    if (layout === null) return;
    const { rows, columns, cellWidth, cellHeight } = layout;
    const drawn = fabricGeometry(rows, columns);
    const { x, y, width, height } = tileBox(rows, columns, tile);
    const across = cellWidth / drawn.cellWidth;
    const down = cellHeight / drawn.cellHeight;
    setBox(image, {
      x: layout.left + (x - drawn.left) * across,
      y: layout.top + (y - drawn.top) * down,
      width: width * across,
      height: height * down,
    });
  }

  private drop(key: string, { image }: Shown): void {
    this.tiles.delete(key);
    image.remove();
    if (image.src !== '') URL.revokeObjectURL(image.src);
  }
}
