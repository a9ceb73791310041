/**
 * A context that is kept in memory: a picture of single pixels, then enlarged, and a few lines are
 * quickly drawn there, while a graphics processor takes up each of them by itself.
 */
export function memoryContext(canvas: HTMLCanvasElement): CanvasRenderingContext2D | null {
  return canvas.getContext('2d', { willReadFrequently: true });
}
