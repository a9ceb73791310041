import type { FlatPiece } from './flat-picture.js';

/** One line to be drawn; those before it lie under it. */
export interface FlatStroke {
  /** SVG path data. */
  readonly path: string;
  /** Any CSS colour. */
  readonly colour: string;
  readonly width: number;
  readonly cap: 'round' | 'butt';
}

/** The lines that draw the pieces of a flat picture, each with its outline under it. */
export function* flatStrokes(pieces: readonly FlatPiece[]): Generator<FlatStroke> {
  for (const piece of pieces) {
    const rim = isBright(piece.colour) ? '#26384a' : '#c9d4dc';
    const tone = (colour: string): string => (piece.faded ? faded(colour) : colour);
    const cap = piece.end ? 'round' : 'butt';
    yield { path: piece.outline, colour: tone(rim), width: piece.width + 2.6, cap };
    yield { path: piece.path, colour: tone(piece.colour), width: piece.width, cap };
    if (piece.mark !== '') {
      yield { path: piece.mark, colour: tone(rim), width: piece.width * 0.17, cap: 'round' };
    }
  }
}

/** Half way to a middling grey: what is not to be looked at. */
function faded(hex: string): string {
  return `color-mix(in srgb, ${hex} 55%, #aab6be)`;
}

function isBright(hex: string): boolean {
  const channel = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16) || 0;
  return 0.3 * channel(1) + 0.59 * channel(3) + 0.11 * channel(5) > 90;
}
