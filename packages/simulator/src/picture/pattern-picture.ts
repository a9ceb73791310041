import type { DiagonalPattern } from '@halfhitch/core';
import type { Words } from '../messages/words.js';
import { linesBetween } from '../piece/chunks.js';
import { PatternKnotting } from '../piece/knotting.js';
import { LatticeChunks } from '../piece/lattice-chunks.js';
import { PictureError, sizeOf } from './markup.js';
import { stillMarkup } from './still.js';

export interface PatternPictureOptions {
  /** Default: front. */
  readonly view?: 'front' | 'back';
  /** The mirror image, as a left-handed maker ties it. */
  readonly mirror?: boolean;
  /** Knots that are tied; default: all of them. */
  readonly knots?: number;
  /** Size in CSS pixels, 16 to 4096; default 240 wide, and as high as the piece is then. */
  readonly width?: number;
  readonly height?: number;
  /** Language of the words in it, such as `de`; default: English. */
  readonly lang?: string;
  /** What a screen reader calls it; default: the size of the piece and what is being tied. */
  readonly label?: string;
  /** Leaves out all words, for a picture whose page says them beside it. */
  readonly decorative?: boolean;
}

/** More would be too much markup for a page to bear. */
export const MOST_KNOTS_PICTURED = 600;

/** Level of detail: outlines of coarser curves break at their corners. */
const LEVEL = 0;

/** What hangs free is not pressed flat. */
const HUNG_FULLNESS = 1.1;

/** Rows of room above and below the piece. */
const ROOM = 3;

/**
 * A still of a piece of diagonal work as SVG markup: the same threads as in 3D, with over and under
 * right, made without a browser. The same options give the same markup.
 *
 * @throws PictureError above 600 knots, or when a size is outside its limits
 */
export function patternPicture(
  pattern: DiagonalPattern,
  options: PatternPictureOptions = {},
): string {
  const knotting = new PatternKnotting(pattern);
  if (knotting.length > MOST_KNOTS_PICTURED) {
    throw new PictureError(
      `The pattern has ${knotting.length} knots; a picture shows up to ${MOST_KNOTS_PICTURED}. Show some of its rows.`,
    );
  }
  const asked = options.knots ?? knotting.length;
  if (!Number.isFinite(asked))
    throw new PictureError(
      `The number of knots is ${asked}; give one from 0 to ${knotting.length}.`,
    );
  const knots = Math.max(0, Math.min(knotting.length, asked));
  const mirror = options.mirror ?? false;
  const chunks = new LatticeChunks(pattern, knotting.order, mirror);
  const box = chunks.boxOf(-ROOM, pattern.rows - 1 + ROOM);
  const wide = box.max[0] - box.min[0];
  const width = sizeOf('width', options.width ?? 240);
  const height = sizeOf(
    'height',
    options.height ?? Math.min(4096, (width * (box.max[1] - box.min[1])) / wide),
  );
  const { first, last } = chunks.chunksOf(0, pattern.rows);
  const lines = linesBetween(chunks.hanging(knots), [-1, 0], 'hanging', 'other', HUNG_FULLNESS);
  for (let chunk = first; chunk <= last; chunk++) {
    const strands = chunks.strands(chunk, LEVEL);
    lines.push(...linesBetween(strands, [-1, knots], `${chunk}`, 'other', chunks.flatFullness));
  }
  const say = (words: Words) => ({
    picture: knotting.sayPicture(words),
    about:
      knots === 0
        ? knotting.sayBegin(words)
        : knots === knotting.length
          ? knotting.sayDone(words)
          : knotting.sayKnot(Math.ceil(knots) - 1, mirror, words),
  });
  return stillMarkup({ lines, box, size: { width, height }, say }, options);
}
