import { knotsAcross, type Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import { NO_SYMMETRY, wholeSymmetry } from '../../draw/edit/symmetry.js';
import { Cursor } from '../../draw/sheet/cursor.js';
import { Gestures } from '../../draw/sheet/gestures.js';
import { type Frame, Sight } from '../../draw/sheet/sight.js';
import { SignStamps } from '../../draw/sheet/signs.js';
import { gridMove } from '../../view/grid-moves.js';
import { plainInk } from '../edit/ink.js';
import { isPlace, nearestPlace } from '../edit/places.js';
import { possible } from '../edit/symmetry.js';
import { LatticeDrawing } from './lattice-drawing.js';
import { LatticeLayout, withinPitches } from './layout.js';
import type { LatticeLook, LatticeMark } from './look.js';
import { paintLattice } from './paint-lattice.js';
import type { LatticeSettings, LatticeSubject } from './subject.js';

const NO_MARKS: readonly LatticeMark[] = [];

/**
 * A lattice to be drawn on, or to choose knots of. Only what is in sight is painted, on a canvas
 * that stays in place while the sheet is scrolled below it.
 *
 * Fires `lattice-edit` (LatticeEdit) for each finished stroke, `lattice-choose` (Place) for a knot
 * that is tapped or entered, `lattice-pick` (number) for what is picked up, `lattice-place` when
 * the cursor has moved, `lattice-say` (string), and `lattice-key` (string) for a key that it has
 * no use for.
 */
export class LatticeSheet extends HTMLElement {
  private subject: LatticeSubject | null = null;
  private settings: LatticeSettings = {
    tool: 'choose',
    ink: plainInk(0),
    symmetry: NO_SYMMETRY,
    signs: false,
  };
  private marks: readonly LatticeMark[] = NO_MARKS;
  private veiledFrom: number | null = null;
  private aspect = 1;
  private at: Place = { row: 0, column: 0 };
  private looked: { readonly of: Uint8Array; readonly look: LatticeLook } | null = null;

  private readonly cursor = new Cursor('Knots of the pattern');
  private readonly stamps = new SignStamps();
  private readonly drawing = this.drawingOf();
  private readonly sight = this.sightOf();

  private readonly gestures = new Gestures(this.sight.window, {
    pushes: ({ button }) => button === 1 || this.settings.tool === 'view',
    begin: (x, y) => this.begin(this.sight.placeAt(x, y)),
    move: (x, y) => this.drawing.follow(this.sight.placeAt(x, y)),
    end: () => this.drawing.finish(),
    cancel: () => this.drawing.cancel(),
    pushBy: (x, y) => this.scrollBy(-x, -y),
    zoomAt: (factor, x, y) => this.sight.zoomAt(factor, x, y),
  });

  private drawingOf(): LatticeDrawing {
    const sheet = this;
    return new LatticeDrawing({
      get subject() {
        return sheet.subject;
      },
      get settings() {
        return sheet.settings;
      },
      edit: (edit) => this.tell('lattice-edit', edit),
      choose: (place) => this.tell('lattice-choose', place),
      pick: (byte) => this.tell('lattice-pick', byte),
      say: (text) => this.tell('lattice-say', text),
      repaint: () => this.sight.wake(),
    });
  }

  private sightOf(): Sight<LatticeLayout> {
    const sheet = this;
    return new Sight(this, this.cursor, {
      get here() {
        return sheet.at;
      },
      layOut: (view, pitch) => {
        const { subject, aspect } = this;
        if (subject === null) return null;
        return new LatticeLayout({ lattice: subject.lattice, aspect, pitch, view });
      },
      withinSizes: withinPitches,
      paint: (ctx, layout, frame) => this.paint(ctx, layout, frame),
    });
  }

  connectedCallback(): void {
    this.sight.connect();
    this.cursor.grid.addEventListener('keydown', this.onKey);
    this.gestures.listen();
  }

  disconnectedCallback(): void {
    this.gestures.unlisten();
    this.cursor.grid.removeEventListener('keydown', this.onKey);
    this.sight.disconnect();
  }

  // ---- what is shown ----

  /** @param aspect row to row, by string to string */
  show(subject: LatticeSubject, aspect: number): void {
    const before = this.subject;
    if (before === subject && aspect === this.aspect) return;
    const { lattice } = subject;
    const other =
      before?.lattice.strings !== lattice.strings ||
      before.lattice.rows !== lattice.rows ||
      before.lattice.first !== lattice.first ||
      aspect !== this.aspect;
    this.subject = subject;
    this.aspect = aspect;
    this.looked = null;
    if (before?.bytes !== subject.bytes) {
      this.gestures.drop();
      this.drawing.drop();
    }
    this.at = nearestPlace(lattice, this.at);
    if (other) this.sight.layOut();
    this.setCell(false);
    this.sight.wake();
  }

  set(settings: LatticeSettings): void {
    if (settings === this.settings) return;
    if (settings.tool !== this.settings.tool) {
      this.gestures.drop();
      this.drawing.drop();
    }
    this.settings = settings;
    this.sight.window.dataset['tool'] = settings.tool;
    this.sight.wake();
  }

  mark(marks: readonly LatticeMark[]): void {
    if (marks === this.marks) return;
    this.marks = marks;
    this.setCell(false);
    this.sight.wake();
  }

  /** Veils knots from a place in the arrays of the lattice on; null for none. */
  veil(from: number | null): void {
    if (from === this.veiledFrom) return;
    this.veiledFrom = from;
    this.sight.wake();
  }

  /** Another pattern altogether: seen from its first knot, in the size that suits it. */
  reset(): void {
    this.subject = null;
    this.at = { row: 0, column: 0 };
    this.sight.reset();
  }

  get here(): Place {
    return this.at;
  }

  goTo(place: Place, { focus = false } = {}): void {
    const { subject } = this;
    if (subject === null) return;
    this.at = nearestPlace(subject.lattice, place);
    this.setCell(focus);
    this.sight.reveal();
    this.sight.wake();
  }

  /** What is drawn, with the stroke in hand. */
  private get bytes(): Uint8Array {
    return this.drawing.inHand ?? this.subject?.bytes ?? new Uint8Array();
  }

  private paint(ctx: CanvasRenderingContext2D, layout: LatticeLayout, frame: Frame): void {
    const { subject, settings } = this;
    if (subject === null) return;
    const { bytes } = this;
    if (this.drawing.inHand !== null || this.looked?.of !== bytes) {
      this.looked = { of: bytes, look: subject.look(bytes) };
    }
    const symmetry = wholeSymmetry(possible(settings.symmetry, subject.lattice));
    paintLattice(
      ctx,
      {
        layout,
        look: this.looked?.look ?? subject.look(bytes),
        ...frame,
        signs: settings.signs,
        symmetry: settings.tool === 'choose' ? NO_SYMMETRY : symmetry,
        marks: this.marks,
        veiledFrom: this.veiledFrom,
        here: this.at,
      },
      this.stamps,
    );
  }

  // ---- by hand ----

  private begin(place: Place): void {
    const { subject } = this;
    if (subject === null) return;
    if (isPlace(subject.lattice, place)) {
      this.at = place;
      this.drawing.drop();
      this.setCell(true);
      this.tell('lattice-place');
    }
    this.drawing.begin(place);
  }

  // ---- by keys ----

  private readonly onKey = (event: KeyboardEvent): void => {
    const { subject } = this;
    if (subject === null || event.defaultPrevented || event.altKey) return;
    if (this.move(event, subject.lattice) || this.plain(event)) event.preventDefault();
  };

  private move(event: KeyboardEvent, lattice: Lattice): boolean {
    const page = Math.max(1, Math.floor(this.clientHeight / (this.sight.layout?.rise ?? 20)) - 4);
    const size = { rows: lattice.rows, columns: knotsAcross(lattice), page };
    const target = gridMove(event.key, this.at, size, event.ctrlKey || event.metaKey);
    if (target === null) return false;
    this.goTo(target, { focus: true });
    this.drawing.moveTo(this.at);
    this.tell('lattice-place');
    return true;
  }

  private plain(event: KeyboardEvent): boolean {
    if (event.ctrlKey || event.metaKey) return false;
    switch (event.key) {
      case ' ':
      case 'Enter':
        this.drawing.drawAt(this.at);
        return true;
      case 'Escape':
        return this.drawing.escape();
      case '+':
      case '=':
        this.zoomBy(1);
        return true;
      case '-':
        this.zoomBy(-1);
        return true;
      default: {
        const key = new CustomEvent('lattice-key', { detail: event.key, cancelable: true });
        return !this.dispatchEvent(key);
      }
    }
  }

  // ---- size and places ----

  zoomBy(way: 1 | -1): void {
    this.sight.zoomBy(way);
  }

  /** All strings in sight, where that leaves knots to be seen. */
  fit(): void {
    this.sight.fit();
  }

  private setCell(focus: boolean): void {
    const { subject, marks, at } = this;
    if (subject === null) return;
    const { lattice } = subject;
    const found = marks
      .filter(({ row, column }) => row === at.row && column === at.column)
      .map(({ message }) => message);
    const words = {
      label: subject.words(at, this.bytes),
      about: found.join(' '),
      selected: false,
    };
    this.cursor.set({ rows: lattice.rows, columns: knotsAcross(lattice) }, at, words, focus);
    this.sight.placeCursor();
  }

  private tell<Detail>(name: string, detail?: Detail): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}

customElements.define('halfhitch-lattice', LatticeSheet);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-lattice': LatticeSheet;
  }
}
