import type { Chart, EdgeTechnique } from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';
import type { NumberedAnswer } from '../work/waiting-answers.js';
import type { NumberedAsk } from '../work/worker-desk.js';
import type { MadeChart, PaletteWish } from './make-chart.js';
import type { Crop, KnotSize } from './size.js';

/** A picture that is open in the worker. */
export interface OpenPicture {
  /** px, turned the right way up. */
  readonly width: number;
  readonly height: number;
  /** A smaller copy to be shown, at most PREVIEW_SIDE on a side. */
  readonly preview: ImageBitmap;
}

export const PREVIEW_SIDE = 1200;

export interface PictureWish {
  readonly crop: Crop;
  readonly size: KnotSize;
  /** `#rrggbb` behind what can be seen through. */
  readonly ground: string;
  readonly palette: PaletteWish;
  readonly name: string;
}

export interface PictureResult extends MadeChart {
  /** Pixels of the crop that can be seen through at least in part. */
  readonly seeThrough: number;
  /** Neighbouring colours that are hard to tell apart, in words. */
  readonly warnings: readonly string[];
}

export type Request =
  | { readonly ask: 'open'; readonly file: File }
  | { readonly ask: 'make'; readonly wish: PictureWish }
  /** The kind of each knot as an index into KNOT_KINDS; null where there are too many. */
  | { readonly ask: 'kinds'; readonly chart: Chart; readonly choice: KnotChoice }
  /** A sample of knots of one colour, as an SVG. */
  | { readonly ask: 'sample'; readonly hex: string }
  /** Width of a knot by its height. */
  | { readonly ask: 'aspect'; readonly edge: EdgeTechnique };

/** Null where a later request of the same kind has taken its place. */
export interface Answers {
  open: OpenPicture | null;
  make: PictureResult | null;
  kinds: Uint8Array | null;
  sample: string | null;
  aspect: number | null;
}

export type Ask = NumberedAsk<Request>;
export type Answer = NumberedAnswer<Answers[keyof Answers]>;
