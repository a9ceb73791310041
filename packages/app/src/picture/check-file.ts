import { InputError, printable } from '@halfhitch/core';
import { type ImageType, imageDimensionsFromData } from 'image-dimensions';
import { PICTURE_LIMITS } from './limits.js';

export interface PictureHeader {
  readonly type: 'png' | 'jpeg' | 'webp';
  /** As stored, px: a camera may have had it turned. */
  readonly width: number;
  readonly height: number;
}

const READ: Readonly<Partial<Record<ImageType, PictureHeader['type']>>> = {
  png: 'png',
  jpeg: 'jpeg',
  webp: 'webp',
};

/** @throws InputError when a file is too large to be looked into */
export function checkFileSize(bytes: number, fileName: string): void {
  if (bytes <= PICTURE_LIMITS.maxBytes) return;
  throw new InputError(
    'picture-file-too-large',
    `The file has ${(bytes / 2 ** 20).toFixed(1)} MiB.`,
    { file: printable(fileName) },
    `A picture can have at most ${PICTURE_LIMITS.maxBytes / 2 ** 20} MiB: save it smaller.`,
  );
}

/**
 * What a picture's file says of itself, so that one that is too large is refused before it is
 * unpacked: a small file can unpack to any size.
 *
 * @throws InputError when it is no PNG, JPEG or WebP, is broken, or is over the limits
 */
export function checkPicture(bytes: Uint8Array, fileName: string): PictureHeader {
  const place = { file: printable(fileName) };
  checkFileSize(bytes.length, fileName);
  const found = headerOf(bytes);
  const type = found === undefined ? undefined : READ[found.type];
  if (found === undefined || type === undefined) {
    throw new InputError(
      'picture-kind',
      bytes.length === 0
        ? 'The file is empty.'
        : `This is ${found === undefined ? 'no picture that can be read here' : `a picture of the kind ${found.type.toUpperCase()}`}.`,
      place,
      'Save it as PNG, JPEG or WebP.',
    );
  }
  const { width, height } = found;
  checkPixels(width, height, fileName);
  return { type, width, height };
}

/** @throws InputError when a picture has no pixels, or more than can be held */
export function checkPixels(width: number, height: number, fileName: string): void {
  const place = { file: printable(fileName) };
  if (!(width > 0 && height > 0)) {
    throw new InputError(
      'picture-empty',
      'The picture has no pixels.',
      place,
      'Save it again from where it came.',
    );
  }
  if (
    width * height > PICTURE_LIMITS.maxPixels ||
    Math.max(width, height) > PICTURE_LIMITS.maxSide
  ) {
    throw new InputError(
      'picture-too-large',
      `The picture has ${width} × ${height} pixels, ${((width * height) / 1e6).toFixed(1)} megapixels.`,
      place,
      `It can have at most ${PICTURE_LIMITS.maxPixels / 1e6} megapixels, and ${PICTURE_LIMITS.maxSide} pixels on a side: save it smaller. A chart needs one pixel for each knot.`,
    );
  }
}

function headerOf(bytes: Uint8Array): ReturnType<typeof imageDimensionsFromData> {
  try {
    return imageDimensionsFromData(bytes);
  } catch {
    // Cut off within its header.
    return undefined;
  }
}
