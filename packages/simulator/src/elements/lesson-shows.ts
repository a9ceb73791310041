import { html, nothing, type TemplateResult } from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { KnotShow, LatticeShow, PieceShow, RowShow, Show } from '../lessons/lesson.js';
import type { HalfhitchKnot } from './knot-element.js';
import type { HalfhitchPiece } from './piece-element.js';
import type { HalfhitchRow } from './row-element.js';

/** The pictures of a page or an answer: what is played, and the knotted results beside each other. */
export function lessonShows(shows: readonly Show[]): TemplateResult | typeof nothing {
  if (shows.length === 0) return nothing;
  const fabrics = shows.filter(({ what }) => what === 'fabric');
  return html`${showsBeside(shows.filter(({ what }) => what !== 'fabric'))}${showsBeside(fabrics)}`;
}

function showsBeside(shows: readonly Show[]): TemplateResult | typeof nothing {
  if (shows.length === 0) return nothing;
  const several = shows.length > 1 ? 'several' : 'one';
  return html`<div class="shows ${several}" part="shows">${shows.map(lessonShow)}</div>`;
}

function lessonShow(show: Show): TemplateResult {
  switch (show.what) {
    case 'knot':
      return html`<figure>${elementOnce(show, knotFor)}</figure>`;
    case 'row':
      return html`<figure>
        <figcaption>${show.caption}</figcaption>
        ${elementOnce(show, rowFor)}
      </figure>`;
    case 'lattice':
      return html`<figure>
        <figcaption>${show.caption}</figcaption>
        ${elementOnce(show, latticeFor)}
      </figure>`;
    case 'piece':
      return html`<figure>
        <figcaption>${show.caption}</figcaption>
        ${elementOnce(show, pieceFor)}
      </figure>`;
    case 'fabric':
      // Made by core's drawFabric or drawDiagonal, which escape every word in it.
      return html`<figure>
        <figcaption>${show.caption}</figcaption>
        <div class="fabric" part="fabric">${unsafeHTML(show.markup)}</div>
      </figure>`;
  }
}

/** Elements by what they show: a page that renders again keeps what is being played. */
const made = new WeakMap<object, HTMLElement>();

function elementOnce<T extends Show>(show: T, make: (show: T) => HTMLElement): HTMLElement {
  const element = made.get(show) ?? make(show);
  made.set(show, element);
  return element;
}

function knotFor(show: KnotShow): HTMLElement {
  const knot = document.createElement('halfhitch-knot') as HalfhitchKnot;
  knot.kind = show.kind;
  knot.tyingColour = show.tyingColour;
  knot.heldColour = show.heldColour;
  knot.tyingName = show.tyingName;
  knot.heldName = show.heldName;
  knot.controls = 'few';
  knot.backward = show.backward;
  if (show.done) knot.seek(knot.length);
  return knot;
}

function rowFor(show: RowShow): HTMLElement {
  const row = document.createElement('halfhitch-row') as HalfhitchRow;
  row.controls = 'few';
  row.still = show.still;
  row.show(show.reading, show.previous);
  if (show.done) row.seekKnotDone(show.knot);
  else row.seekKnot(show.knot);
  return row;
}

function latticeFor(show: LatticeShow): HTMLElement {
  const row = document.createElement('halfhitch-row') as HalfhitchRow;
  row.controls = 'few';
  row.still = show.still;
  row.pattern = show.pattern;
  row.row = show.row;
  if (show.done) row.seekKnotDone(show.knot);
  else row.seekKnot(show.knot);
  return row;
}

function pieceFor(show: PieceShow): HTMLElement {
  const piece = document.createElement('halfhitch-piece') as HalfhitchPiece;
  piece.controls = 'few';
  piece.rowsShown = 0;
  piece.trailOf = show.trailOf;
  piece.pattern = show.pattern;
  return piece;
}
