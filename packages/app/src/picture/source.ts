import { InputError, printable } from '@halfhitch/core';
import { Averager, type KnotLight } from './average.js';
import { checkFileSize, checkPicture, checkPixels } from './check-file.js';
import { PREVIEW_SIDE } from './messages.js';
import type { Crop, KnotSize } from './size.js';

/** Pixels unpacked at a time: 4 MB of them. */
const STRIP = 2 ** 20;

/** A picture unpacked by the browser, which turns it the right way up and its colours into sRGB. */
export class PictureSource {
  private last: { readonly key: string; readonly knots: KnotLight } | null = null;

  private constructor(private readonly bitmap: ImageBitmap) {}

  /** @throws InputError when the file is over the limits, or cannot be read */
  static async open(file: File): Promise<PictureSource> {
    checkFileSize(file.size, file.name);
    checkPicture(new Uint8Array(await file.arrayBuffer()), file.name);
    let bitmap: ImageBitmap;
    try {
      bitmap = await createImageBitmap(file, {
        imageOrientation: 'from-image',
        premultiplyAlpha: 'none',
      });
    } catch {
      throw new InputError(
        'picture-broken',
        'The picture is damaged, or of a make that this browser cannot read.',
        { file: printable(file.name) },
        'Open it in another program and save it anew as PNG or JPEG.',
      );
    }
    try {
      // A file can say one size at its beginning and unpack to another.
      checkPixels(bitmap.width, bitmap.height, file.name);
    } catch (error) {
      bitmap.close();
      throw error;
    }
    return new PictureSource(bitmap);
  }

  get width(): number {
    return this.bitmap.width;
  }

  get height(): number {
    return this.bitmap.height;
  }

  close(): void {
    this.bitmap.close();
  }

  preview(): Promise<ImageBitmap> {
    const scale = Math.min(1, PREVIEW_SIDE / Math.max(this.width, this.height));
    return createImageBitmap(this.bitmap, {
      resizeWidth: Math.max(1, Math.round(this.width * scale)),
      resizeHeight: Math.max(1, Math.round(this.height * scale)),
      resizeQuality: 'medium',
    });
  }

  /** The colours of the knots; the last ones are kept, since mostly it is the palette that changes. */
  *average(crop: Crop, size: KnotSize, ground: string): Generator<undefined, KnotLight, undefined> {
    const key = JSON.stringify([crop, size, ground]);
    if (this.last?.key === key) return this.last.knots;
    const { left, top, width, height } = crop;
    const high = Math.min(height, Math.max(1, Math.floor(STRIP / width)));
    const canvas = new OffscreenCanvas(width, high);
    const context = canvas.getContext('2d', { willReadFrequently: true });
    if (context === null) throw new Error('The browser gives no canvas.');
    const averager = new Averager(width, height, size, ground);
    for (let y = 0; y < height; y += high) {
      const lines = Math.min(high, height - y);
      context.clearRect(0, 0, width, high);
      context.drawImage(this.bitmap, left, top + y, width, lines, 0, 0, width, lines);
      averager.add(context.getImageData(0, 0, width, lines).data, y);
      yield;
    }
    const knots = averager.finish();
    this.last = { key, knots };
    return knots;
  }
}
