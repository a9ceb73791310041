import { type Chart, fabricGeometry, KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import type { PictureDesk } from './desk.js';
import { IN_SAMPLE, SAMPLE } from './sample.js';

/** Above this a canvas would take more than it gives, px. */
const FINEST = 96;

/**
 * Samples of knots in threads of several colours, of which pieces are put together knot by knot.
 * Drawing a whole piece as lines takes a browser seconds; copying small pictures takes none.
 */
export class ThreadSamples {
  private readonly samples = new Map<string, HTMLImageElement>();
  /** Samples at the size that was last drawn. */
  private readonly sized = new Map<string, HTMLCanvasElement>();
  private size = '';

  async fetch(hex: string, desk: PictureDesk): Promise<void> {
    if (this.samples.has(hex)) return;
    const svg = await desk.ask({ ask: 'sample', hex });
    // Another asked meanwhile, and has asked for its own.
    if (svg === null) return;
    // What is drawn may be stretched to the true proportions of a knot.
    const stretched = svg.replace('<svg ', '<svg preserveAspectRatio="none" ');
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([stretched], { type: 'image/svg+xml' }));
    await image.decode();
    this.samples.set(hex, image);
  }

  clear(): void {
    for (const image of this.samples.values()) URL.revokeObjectURL(image.src);
    this.samples.clear();
    this.sized.clear();
  }

  /**
   * Draws a piece knot by knot.
   *
   * @param kinds of the knots, as the piece is proven to be tied
   * @param size of the drawing, in the context's units
   * @param fine pixels of the canvas for one of its units
   */
  weave(
    context: CanvasRenderingContext2D,
    { rows, columns, colours, cells }: Chart,
    kinds: Uint8Array,
    size: { readonly width: number; readonly height: number },
    fine: number,
  ): void {
    const wide = Math.max(1, Math.min(FINEST, Math.ceil((size.width / columns) * fine)));
    const high = Math.max(1, Math.min(FINEST, Math.ceil((size.height / rows) * fine)));
    const samples = colours.map(({ hex }) => this.sampleOf(hex, wide, high));
    // Whole pixels, so that no seams show between knots.
    const across = Array.from(
      { length: columns + 1 },
      (_, column) => Math.round((column * size.width * fine) / columns) / fine,
    );
    const down = Array.from(
      { length: rows + 1 },
      (_, row) => Math.round((row * size.height * fine) / rows) / fine,
    );
    for (let row = 0; row < rows; row++) {
      const top = down[row] as number;
      const height = (down[row + 1] as number) - top;
      for (let column = 0; column < columns; column++) {
        const cell = row * columns + column;
        const sample = samples[cells[cell] as number];
        const kind = KNOT_KINDS[kinds[cell] as number];
        if (sample === undefined || kind === undefined) continue;
        const left = across[column] as number;
        const width = (across[column + 1] as number) - left;
        const at = KNOT_KINDS.indexOf(kind) * wide;
        context.drawImage(sample, at, 0, wide, high, left, top, width, height);
      }
    }
  }

  /** The kinds of knots side by side, in the order of KNOT_KINDS. */
  private sampleOf(hex: string, wide: number, high: number): HTMLCanvasElement | undefined {
    const size = `${wide} ${high}`;
    if (size !== this.size) this.sized.clear();
    this.size = size;
    const known = this.sized.get(hex);
    const image = this.samples.get(hex);
    if (known !== undefined || image === undefined) return known;
    const canvas = document.createElement('canvas');
    canvas.width = wide * KNOT_KINDS.length;
    canvas.height = high;
    const context = canvas.getContext('2d');
    if (context === null) return undefined;
    const { left, top, cellWidth, cellHeight } = fabricGeometry(SAMPLE.rows, SAMPLE.columns);
    // Where a knot leaves gaps, the shade between threads shows.
    for (const shade of [hex, 'rgb(0 0 0 / 45%)']) {
      context.fillStyle = shade;
      context.fillRect(0, 0, canvas.width, canvas.height);
    }
    KNOT_KINDS.forEach((kind: KnotKind, i) => {
      const { row, column } = IN_SAMPLE[kind];
      const from = { x: left + column * cellWidth, y: top + row * cellHeight };
      context.drawImage(image, from.x, from.y, cellWidth, cellHeight, i * wide, 0, wide, high);
    });
    this.sized.set(hex, canvas);
    return canvas;
  }
}
