import { KNOT_KINDS, mirrorKnot, NO_STRING_HERE } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import type { Place } from '../../draw/edit/place.js';
import { indexOf, isPlace } from '../edit/places.js';
import { placeInWords } from '../lattice/words.js';
import type { DiagonalPiece } from '../work/messages.js';

/** A knot to be watched. */
interface Watched {
  readonly kind: (typeof KNOT_KINDS)[number];
  readonly tying: { readonly string: number; readonly colour: string; readonly name: string };
  readonly held: { readonly string: number; readonly colour: string; readonly name: string };
}

/** The knot in a place by itself. */
export function knotStage(piece: DiagonalPiece, place: Place, mirror: boolean): TemplateResult {
  const knot = watchedAt(piece, place);
  const where = placeInWords(piece.pattern, place);
  if (knot === null) return html`<p class="which">${where}: no knot here.</p>`;
  const { kind, tying, held } = knot;
  return html`
    <p class="which">
      ${where}: ${kind} knot${mirror ? `; mirrored: ${mirrorKnot(kind)}` : nothing}
    </p>
    <p>
      String ${tying.string + 1} (${tying.name}) ties onto string ${held.string + 1} (${held.name}).
    </p>
    <halfhitch-knot
      ?mirror=${mirror}
      .kind=${kind}
      .tyingColour=${tying.colour}
      .heldColour=${held.colour}
      .tyingName=${`string ${tying.string + 1}`}
      .heldName=${`string ${held.string + 1}`}
    ></halfhitch-knot>
  `;
}

/** The knot in a place; null where none is tied. */
export function watchedAt({ pattern, reading }: DiagonalPiece, place: Place): Watched | null {
  if (!isPlace(pattern, place)) return null;
  const at = indexOf(pattern, place);
  const kind = KNOT_KINDS[pattern.knots[at] as number];
  const [tying, held] = [reading.tying[at] as number, reading.held[at] as number];
  if (kind === undefined || tying === NO_STRING_HERE) return null;
  const string = (one: number) => {
    const colour = pattern.colours[pattern.start[one] as number];
    const hex = colour?.hex ?? '#808080';
    return { string: one, colour: hex, name: colour?.name || hex };
  };
  return { kind, tying: string(tying), held: string(held) };
}
