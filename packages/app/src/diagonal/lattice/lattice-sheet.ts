import { knotsAcross, type Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import { NO_SYMMETRY, type Symmetry, wholeSymmetry } from '../../draw/edit/symmetry.js';
import { Cursor } from '../../draw/sheet/cursor.js';
import { Gestures } from '../../draw/sheet/gestures.js';
import { type Inks, inksOf } from '../../draw/sheet/inks.js';
import { memoryContext } from '../../draw/sheet/paint-sheet.js';
import { SignStamps } from '../../draw/sheet/signs.js';
import { gridMove } from '../../view/grid-moves.js';
import { type Ink, plainInk } from '../edit/ink.js';
import { indexOf, isPlace, nearestPlace } from '../edit/places.js';
import { inked, LatticeStroke, patchAt } from '../edit/strokes.js';
import { possible } from '../edit/symmetry.js';
import { HEADER, LatticeLayout, withinPitches } from './layout.js';
import type { LatticeLook, LatticeMark } from './look.js';
import { paintLattice } from './paint-lattice.js';

/** `choose` draws nothing: a knot that is tapped is told. */
export type LatticeTool = 'pencil' | 'line' | 'fill' | 'pick' | 'view' | 'choose';

export interface LatticeSettings {
  readonly tool: LatticeTool;
  readonly ink: Ink;
  readonly symmetry: Symmetry;
  readonly signs: boolean;
}

/** What a lattice sheet shows, and what is drawn on it. */
export interface LatticeSubject {
  readonly lattice: Lattice;
  /** What strokes are drawn into; `rows x knotsAcross`. */
  readonly bytes: Uint8Array;
  /** All that is seen, with a stroke in hand. */
  readonly look: (bytes: Uint8Array) => LatticeLook;
  /** "Row 3, strings 4 and 5: buoy orange" */
  readonly words: (place: Place, bytes: Uint8Array) => string;
}

/** A stroke that is finished. */
export interface LatticeEdit {
  readonly bytes: Uint8Array;
  /** For the button that takes it back. */
  readonly what: string;
}

const WHAT = {
  pencil: 'Draw with the pencil',
  line: 'Draw a line',
} as const;

const NO_MARKS: readonly LatticeMark[] = [];

/** Finer than this nobody sees it, and twice as many pixels take twice as long. */
const MOST_DPR = 2;

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
  private stroke: LatticeStroke | null = null;
  /** A line that was begun by keys. */
  private begun: LatticeStroke | null = null;
  private tapped: Place | null = null;
  private looked: { readonly of: Uint8Array; readonly look: LatticeLook } | null = null;

  private layout: LatticeLayout | null = null;
  private pitch: number | null = null;
  private inks: Inks | null = null;
  private frame = 0;
  private space = false;

  private readonly extent = box('sheet-extent');
  private readonly window = box('sheet-frame');
  private readonly canvas = document.createElement('canvas');
  private readonly cursor = new Cursor('Knots of the pattern');
  private readonly stamps = new SignStamps();
  private sizes: ResizeObserver | null = null;
  private readonly themes = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(
    (query) => matchMedia(query),
  );

  private readonly gestures = new Gestures(this.window, {
    pushes: ({ button }) => button === 1 || this.settings.tool === 'view' || this.space,
    begin: (x, y) => this.begin(this.placeAt(x, y)),
    move: (x, y) => this.follow(this.placeAt(x, y)),
    end: () => this.finish(),
    cancel: () => this.cancel(),
    pushBy: (x, y) => this.scrollBy(-x, -y),
    zoomAt: (factor, x, y) => this.zoomAt(factor, x, y),
  });

  connectedCallback(): void {
    this.classList.add('sheet');
    this.canvas.className = 'sheet-canvas';
    this.canvas.setAttribute('aria-hidden', 'true');
    this.window.append(this.canvas, this.cursor.element);
    this.extent.append(this.window);
    this.replaceChildren(this.extent);
    this.addEventListener('scroll', this.wake, { passive: true });
    const { grid } = this.cursor;
    grid.addEventListener('keydown', this.onKey);
    grid.addEventListener('focusin', this.onFocus);
    this.gestures.listen();
    for (const theme of this.themes) theme.addEventListener('change', this.onTheme);
    this.sizes = new ResizeObserver(() => this.layOut());
    this.sizes.observe(this);
  }

  disconnectedCallback(): void {
    this.sizes?.disconnect();
    this.sizes = null;
    this.gestures.unlisten();
    this.removeEventListener('scroll', this.wake);
    const { grid } = this.cursor;
    grid.removeEventListener('keydown', this.onKey);
    grid.removeEventListener('focusin', this.onFocus);
    for (const theme of this.themes) theme.removeEventListener('change', this.onTheme);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
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
      this.stroke = null;
      this.begun = null;
    }
    this.at = nearestPlace(lattice, this.at);
    if (other) this.layOut();
    this.setCell(false);
    this.wake();
  }

  set(settings: LatticeSettings): void {
    if (settings === this.settings) return;
    if (settings.tool !== this.settings.tool) {
      this.gestures.drop();
      this.begun = null;
    }
    this.settings = settings;
    this.window.dataset['tool'] = settings.tool;
    this.wake();
  }

  mark(marks: readonly LatticeMark[]): void {
    if (marks === this.marks) return;
    this.marks = marks;
    this.setCell(false);
    this.wake();
  }

  /** Veils knots from a place in the arrays of the lattice on; null for none. */
  veil(from: number | null): void {
    if (from === this.veiledFrom) return;
    this.veiledFrom = from;
    this.wake();
  }

  /** Another pattern altogether: seen from its first knot, in the size that suits it. */
  reset(): void {
    this.subject = null;
    this.pitch = null;
    this.at = { row: 0, column: 0 };
    this.scrollTo(0, 0);
  }

  get here(): Place {
    return this.at;
  }

  goTo(place: Place, { focus = false } = {}): void {
    const { subject } = this;
    if (subject === null) return;
    this.at = nearestPlace(subject.lattice, place);
    this.setCell(focus);
    this.reveal();
    this.wake();
  }

  private readonly wake = (): void => {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.paint();
    });
  };

  /** What is drawn, with the stroke in hand. */
  private get bytes(): Uint8Array {
    return (this.stroke ?? this.begun)?.bytes ?? this.subject?.bytes ?? new Uint8Array();
  }

  private paint(): void {
    const { subject, layout, canvas, settings } = this;
    const ctx = memoryContext(canvas);
    if (subject === null || layout === null || ctx === null || this.clientHeight === 0) return;
    const dpr = Math.max(1, Math.min(MOST_DPR, devicePixelRatio));
    const view = { width: this.clientWidth, height: this.clientHeight };
    const scroll = { left: this.scrollLeft, top: this.scrollTop };
    const [width, height] = [Math.round(view.width * dpr), Math.round(view.height * dpr)];
    if (canvas.width !== width || canvas.height !== height) {
      Object.assign(canvas, { width, height });
    }
    this.inks ??= inksOf(this);
    const inHand = this.stroke ?? this.begun;
    const { bytes } = this;
    if (inHand !== null || this.looked?.of !== bytes) {
      this.looked = { of: bytes, look: subject.look(bytes) };
    }
    const symmetry = wholeSymmetry(possible(settings.symmetry, subject.lattice));
    paintLattice(
      ctx,
      {
        layout,
        look: this.looked?.look ?? subject.look(bytes),
        scroll,
        view,
        dpr,
        signs: settings.signs,
        symmetry: settings.tool === 'choose' ? NO_SYMMETRY : symmetry,
        marks: this.marks,
        veiledFrom: this.veiledFrom,
        here: this.at,
        inks: this.inks,
      },
      this.stamps,
    );
    this.cursor.place(layout, this.at, scroll);
    // For whoever waits until the picture is there.
    canvas.dataset['painted'] = String(Number(canvas.dataset['painted'] ?? 0) + 1);
  }

  private readonly onTheme = (): void => {
    this.inks = null;
    this.wake();
  };

  // ---- by hand ----

  private begin(place: Place): void {
    const { subject, settings } = this;
    if (subject === null) return;
    const inside = isPlace(subject.lattice, place);
    this.begun = null;
    if (inside) {
      this.at = place;
      this.setCell(true);
      this.tell('lattice-place');
    }
    const { tool, ink, symmetry } = settings;
    if (tool === 'pencil' || tool === 'line') {
      const { lattice, bytes } = subject;
      this.stroke = new LatticeStroke(lattice, bytes, tool, ink, symmetry, place);
    } else if (inside) this.tapped = place;
    this.wake();
  }

  private follow(place: Place): void {
    this.stroke?.moveTo(place);
    if (this.tapped !== null && !same(this.tapped, place)) this.tapped = null;
    this.wake();
  }

  private finish(): void {
    const { stroke, tapped, settings } = this;
    this.stroke = null;
    this.tapped = null;
    if (stroke !== null)
      this.edit(stroke.bytes, settings.tool === 'line' ? WHAT.line : WHAT.pencil);
    else if (tapped !== null) this.act(tapped);
    this.wake();
  }

  private cancel(): void {
    this.stroke = null;
    this.tapped = null;
    this.wake();
  }

  /** What a tap or Enter does with tools that do it in one place. */
  private act(place: Place): void {
    const { subject, settings } = this;
    if (subject === null) return;
    const { lattice, bytes } = subject;
    const { tool, ink, symmetry } = settings;
    if (!isPlace(lattice, place)) return;
    if (tool === 'choose') this.tell('lattice-choose', place);
    else if (tool === 'pick') this.tell('lattice-pick', bytes[indexOf(lattice, place)]);
    else if (tool === 'fill') {
      this.edit(inked(lattice, bytes, patchAt(lattice, bytes, place), ink, symmetry), 'Fill');
    }
  }

  private edit(bytes: Uint8Array, what: string): void {
    const before = this.subject?.bytes;
    if (before === undefined || bytes.every((byte, at) => byte === before[at])) return;
    this.tell<LatticeEdit>('lattice-edit', { bytes, what });
  }

  // ---- by keys ----

  private readonly onKey = (event: KeyboardEvent): void => {
    const { subject } = this;
    if (subject === null || event.defaultPrevented || event.altKey) return;
    if (this.move(event, subject.lattice) || this.plain(event, subject)) event.preventDefault();
  };

  private move(event: KeyboardEvent, lattice: Lattice): boolean {
    const page = Math.max(1, Math.floor(this.clientHeight / (this.layout?.rise ?? 20)) - 4);
    const size = { rows: lattice.rows, columns: knotsAcross(lattice), page };
    const target = gridMove(event.key, this.at, size, event.ctrlKey || event.metaKey);
    if (target === null) return false;
    this.goTo(target, { focus: true });
    this.begun?.moveTo(this.at);
    this.tell('lattice-place');
    return true;
  }

  private plain(event: KeyboardEvent, subject: LatticeSubject): boolean {
    if (event.ctrlKey || event.metaKey) return false;
    switch (event.key) {
      case ' ':
      case 'Enter':
        this.drawHere(subject);
        return true;
      case 'Escape':
        if (this.begun === null && this.stroke === null) return false;
        this.begun = null;
        this.cancel();
        return true;
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

  private drawHere({ lattice, bytes }: LatticeSubject): void {
    const { tool, ink, symmetry } = this.settings;
    if (tool === 'pencil') this.edit(inked(lattice, bytes, [this.at], ink, symmetry), WHAT.pencil);
    else if (tool !== 'line') this.act(this.at);
    else if (this.begun === null) {
      this.begun = new LatticeStroke(lattice, bytes, tool, ink, symmetry, this.at);
      this.tell(
        'lattice-say',
        'A line is begun. Go to its other end and press Enter; Escape gives it up.',
      );
    } else {
      const { begun } = this;
      this.begun = null;
      this.edit(begun.bytes, WHAT.line);
    }
    this.wake();
  }

  // ---- size ----

  zoomBy(way: 1 | -1): void {
    const { left, top } = this.getBoundingClientRect();
    this.zoomAt(way > 0 ? 1.25 : 0.8, left + this.clientWidth / 2, top + this.clientHeight / 2);
  }

  /** All strings in sight, where that leaves knots to be seen. */
  fit(): void {
    this.pitch = null;
    this.layOut();
    this.reveal();
  }

  private zoomAt(factor: number, clientX: number, clientY: number): void {
    const before = this.layout;
    if (before === null) return;
    const next = withinPitches(before.pitch * factor);
    if (next === before.pitch) return;
    const { left, top } = this.getBoundingClientRect();
    const [x, y] = [clientX - left - this.clientLeft, clientY - top - this.clientTop];
    const across = (x + this.scrollLeft - before.left) / before.pitch;
    const down = (y + this.scrollTop - before.top) / before.rise;
    this.pitch = next;
    this.layOut();
    const after = this.layout ?? before;
    this.scrollTo(after.left + across * after.pitch - x, after.top + down * after.rise - y);
  }

  private layOut(): void {
    const { subject } = this;
    if (subject === null || this.clientWidth === 0) return;
    const { lattice } = subject;
    const set = (): LatticeLayout => {
      const view = { width: this.clientWidth, height: this.clientHeight };
      const layout = new LatticeLayout({ lattice, aspect: this.aspect, pitch: this.pitch, view });
      this.extent.style.width = `${layout.width}px`;
      this.extent.style.height = `${layout.height}px`;
      return layout;
    };
    const [width, height] = [this.clientWidth, this.clientHeight];
    this.layout = set();
    // Scroll bars that have come or gone leave another room.
    if (this.clientWidth !== width || this.clientHeight !== height) this.layout = set();
    this.window.style.width = `${this.clientWidth}px`;
    this.window.style.height = `${this.clientHeight}px`;
    this.wake();
  }

  // ---- places ----

  private placeAt(clientX: number, clientY: number): Place {
    const { left, top } = this.getBoundingClientRect();
    const x = clientX - left - this.clientLeft + this.scrollLeft;
    const y = clientY - top - this.clientTop + this.scrollTop;
    return this.layout?.placeAt(x, y) ?? { row: 0, column: 0 };
  }

  private setCell(focus: boolean): void {
    const { subject, marks, at, layout } = this;
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
    const scroll = { left: this.scrollLeft, top: this.scrollTop };
    if (layout !== null) this.cursor.place(layout, at, scroll);
  }

  private reveal(): void {
    const { layout } = this;
    if (layout === null) return;
    const { x, y, width, height } = layout.boxOf(this.at);
    const shift = (from: number, size: number, at: number, first: number, end: number): number => {
      if (from < at + first) return Math.max(0, from - first);
      return from + size > at + end ? from + size - end : at;
    };
    const beside = layout.gutter + width;
    this.scrollTo({
      left: shift(x, width, this.scrollLeft, beside, this.clientWidth - beside),
      top: shift(y, height, this.scrollTop, HEADER + height, this.clientHeight - 2 * height),
    });
  }

  private readonly onFocus = (): void => this.reveal();

  private tell<Detail>(name: string, detail?: Detail): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}

function same(one: Place, other: Place): boolean {
  return one.row === other.row && one.column === other.column;
}

function box(className: string): HTMLElement {
  const element = document.createElement('div');
  element.className = className;
  return element;
}

customElements.define('halfhitch-lattice', LatticeSheet);

declare global {
  interface HTMLElementTagNameMap {
    'halfhitch-lattice': LatticeSheet;
  }
}
