import type { FlatPiece } from '../flat/flat-picture.js';
import { flatStrokes } from '../flat/flat-strokes.js';

export class PictureError extends Error {
  override name = 'PictureError';
}

/** What a screen reader is told of a picture: as text, escaped when it is written. */
interface PictureWords {
  readonly lang: string;
  readonly label: string;
  readonly about: string;
}

/** Flat pieces as SVG markup; without words where the page says them beside it. */
export function pictureMarkup(
  pieces: readonly FlatPiece[],
  { width, height }: { readonly width: number; readonly height: number },
  words: PictureWords | null,
): string {
  let paths = '';
  for (const { path, colour, width: thick, cap } of flatStrokes(pieces)) {
    const round = cap === 'round' ? ' stroke-linecap="round"' : '';
    paths += `<path d="${path}" stroke="${colour}" stroke-width="${thick.toFixed(1)}"${round}/>`;
  }
  const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`;
  const drawing = `<g fill="none" stroke-linejoin="round">${paths}</g></svg>`;
  if (words === null) return `${head} aria-hidden="true">${drawing}`;
  const label = escaped(words.label);
  return `${head} role="img" lang="${words.lang}" aria-label="${label}"><title>${label}</title><desc>${escaped(words.about)}</desc>${drawing}`;
}

/** @throws PictureError when a size is outside its limits */
export function sizeOf(name: string, size: number): number {
  if (size >= 16 && size <= 4096) return Math.round(size);
  throw new PictureError(`The ${name} is ${size}; give a number of pixels from 16 to 4096.`);
}

export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
