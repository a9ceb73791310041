import { fabricGeometry } from '@halfhitch/core';
import { type Tile, tileBox } from '../work/fabric-tile.js';
import { setBox } from './box.js';

/** Knots across and down in a tile: few enough that a tile is drawn without a pause. */
const TILE = { columns: 40, rows: 14 } as const;

/** Rows and columns of a piece. */
interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** What of a sheet is in sight, px. */
export interface InSight {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The knotted piece in tiles, of which only those near what is in sight are drawn and kept: so a
 * piece of ten thousand rows costs no more than a small one.
 */
export class FabricTiles {
  private readonly tiles = new Map<number, HTMLImageElement>();
  private size: Size | null = null;
  private scale = 1;
  /** Grows with each piece; tiles asked for an earlier one are thrown away. */
  private issue = 0;

  /**
   * @param sheet what they are put into, before all else in it
   * @param drawTile gives an SVG document
   */
  constructor(
    private readonly sheet: HTMLElement,
    private readonly drawTile: (tile: Tile) => Promise<string>,
  ) {}

  /** Another piece: nothing of the one before is shown any more. */
  renew({ rows, columns }: Size): void {
    this.issue++;
    this.clear();
    this.size = { rows, columns };
  }

  setScale(scale: number): void {
    if (scale === this.scale) return;
    this.scale = scale;
    for (const [key, image] of this.tiles) this.setTile(key, image);
  }

  /** Draws what has come near, and drops what has gone. */
  show(sight: InSight): void {
    const { size, scale } = this;
    if (size === null) return;
    const { left, top, cellWidth, cellHeight } = fabricGeometry(size.rows, size.columns);
    const [firstX, lastX] = near(
      (sight.left / scale - left) / cellWidth / TILE.columns,
      sight.width / scale / cellWidth / TILE.columns,
      this.across,
    );
    const [firstY, lastY] = near(
      (sight.top / scale - top) / cellHeight / TILE.rows,
      sight.height / scale / cellHeight / TILE.rows,
      Math.ceil(size.rows / TILE.rows),
    );
    const wanted = new Set<number>();
    for (let y = firstY; y <= lastY; y++) {
      for (let x = firstX; x <= lastX; x++) wanted.add(y * this.across + x);
    }
    for (const [key, image] of this.tiles) if (!wanted.has(key)) this.drop(key, image);
    for (const key of wanted) if (!this.tiles.has(key)) void this.draw(key);
  }

  clear(): void {
    for (const [key, image] of this.tiles) this.drop(key, image);
  }

  private get across(): number {
    return Math.ceil((this.size?.columns ?? 1) / TILE.columns);
  }

  private tileOf(key: number): Tile {
    const { rows, columns } = this.size ?? { rows: 1, columns: 1 };
    const firstRow = Math.floor(key / this.across) * TILE.rows;
    const firstColumn = (key % this.across) * TILE.columns;
    return {
      firstRow,
      endRow: Math.min(rows, firstRow + TILE.rows),
      firstColumn,
      endColumn: Math.min(columns, firstColumn + TILE.columns),
    };
  }

  private async draw(key: number): Promise<void> {
    const { issue } = this;
    const image = document.createElement('img');
    image.alt = '';
    image.draggable = false;
    this.tiles.set(key, image);
    this.setTile(key, image);
    try {
      const picture = await this.drawTile(this.tileOf(key));
      if (issue !== this.issue || this.tiles.get(key) !== image) return;
      image.src = URL.createObjectURL(new Blob([picture], { type: 'image/svg+xml' }));
      this.sheet.prepend(image);
    } catch {
      // The tile stays empty and is asked for again when it next comes into sight.
      if (this.tiles.get(key) === image) this.tiles.delete(key);
    }
  }

  private setTile(key: number, image: HTMLImageElement): void {
    const { size, scale } = this;
    if (size === null) return;
    const { x, y, width, height } = tileBox(size.rows, size.columns, this.tileOf(key));
    setBox(image, { x: x * scale, y: y * scale, width: width * scale, height: height * scale });
  }

  private drop(key: number, image: HTMLImageElement): void {
    this.tiles.delete(key);
    image.remove();
    URL.revokeObjectURL(image.src);
  }
}

/**
 * The tiles in one direction that are in sight, and half a screen more, so that scrolling seldom
 * shows an empty place.
 *
 * @param from where what is in sight begins, in tiles
 * @param size how much is in sight, in tiles
 * @param many tiles in all
 */
function near(from: number, size: number, many: number): readonly [first: number, last: number] {
  const at = (tile: number): number => Math.max(0, Math.min(many - 1, Math.floor(tile)));
  return [at(from - size / 2), at(from + 1.5 * size)];
}
