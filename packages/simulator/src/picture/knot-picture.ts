import { KNOT_KINDS, type KnotKind, mirrorKnot } from '@halfhitch/core';
import { knotBox, knotLines } from '../knot/knot-lines.js';
import { knotWords, plainNames } from '../knot/knot-words.js';
import type { Words } from '../messages/words.js';
import { escaped, PictureError, sizeOf } from './markup.js';
import { stillMarkup } from './still.js';

export { PictureError } from './markup.js';

export interface KnotPictureOptions {
  /** Default: forward. */
  readonly kind?: KnotKind;
  /** Moment of the knotting from 0 to 2, a half hitch each; default 2, the finished knot. */
  readonly moment?: number;
  /** Default: front. */
  readonly view?: 'front' | 'back';
  /** The mirror image, as a left-handed maker ties it. */
  readonly mirror?: boolean;
  /** `#rrggbb`; anything else is grey. */
  readonly tyingColour?: string;
  readonly heldColour?: string;
  /** Size in CSS pixels, 16 to 4096; default 240 by 280. */
  readonly width?: number;
  readonly height?: number;
  /** Language of the words in it, such as `de`; default: English. */
  readonly lang?: string;
  /** What a screen reader calls it; default: the knot and what is being done. */
  readonly label?: string;
  /** Leaves out all words, for a picture whose page says them beside it. */
  readonly decorative?: boolean;
}

/** Points of the tying string: a small picture need not weigh much. */
const POINTS = 256;

/**
 * A small picture of a knot as SVG markup: the same threads as in 3D, with over and under right,
 * made without a browser. The same options give the same markup.
 *
 * @throws PictureError when the kind is none, the moment no number, or a size outside its limits
 */
export function knotPicture(options: KnotPictureOptions = {}): string {
  const kind = options.kind ?? 'forward';
  if (!KNOT_KINDS.includes(kind)) {
    throw new PictureError(
      `"${String(kind)}" is no kind of knot; choose ${KNOT_KINDS.join(', ')}.`,
    );
  }
  const asked = options.moment ?? 2;
  if (!Number.isFinite(asked)) throw new PictureError('The moment must be a number from 0 to 2.');
  const moment = Math.max(0, Math.min(2, asked));
  const width = sizeOf('width', options.width ?? 240);
  const height = sizeOf('height', options.height ?? 280);
  const mirror = options.mirror ?? false;
  const look = {
    kind,
    mirror,
    tyingColour: plainColour(options.tyingColour ?? '#2f6f9f'),
    heldColour: plainColour(options.heldColour ?? '#e9e2d0'),
    points: POINTS,
  };
  const shown = mirror ? mirrorKnot(kind) : kind;
  const say = (words: Words) => ({
    picture: words(moment >= 2 ? 'knot.pictureDone' : 'knot.picture', {
      kind: words(`kind.${shown}`),
    }),
    about: knotWords(shown, moment, plainNames(words, '', ''), words).said,
  });
  const lines = knotLines(look, moment);
  return stillMarkup({ lines, box: knotBox(moment), size: { width, height }, say }, options);
}

/** Anything that is no colour would upset the drawing, so it becomes grey. */
export function plainColour(colour: string): string {
  return /^#[0-9a-f]{6}$/i.test(colour) ? colour : '#8a8f94';
}

/**
 * A `<halfhitch-picture>` with its picture already in it: what a server sends, seen before any
 * script has run and without one.
 *
 * @throws PictureError as `knotPicture` does
 */
export function knotPictureElement(options: KnotPictureOptions = {}): string {
  const attributes: [string, string | number | undefined][] = [
    ['kind', options.kind ?? 'forward'],
    ['moment', options.moment],
    ['view', options.view],
    ['tying-colour', options.tyingColour],
    ['held-colour', options.heldColour],
    ['lang', options.lang],
    ['label', options.label],
  ];
  const written = attributes
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('');
  const flags = `${options.mirror ? ' mirror' : ''}${options.decorative ? ' decorative' : ''}`;
  return `<halfhitch-picture${written}${flags}>${knotPicture(options)}</halfhitch-picture>`;
}
