import type { Box } from '../../view/box.js';
import type { Place } from '../edit/place.js';
import type { Cursor } from './cursor.js';
import { type Inks, inksOf } from './inks.js';
import { memoryContext } from './memory-context.js';

/** Finer than this nobody sees it, and twice as many pixels take twice as long. */
const MOST_DPR = 2;

/** By how much a step of the zoom makes larger or smaller. */
const STEP = { larger: 1.25, smaller: 0.8 } as const;

/** px */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Where knots are on a sheet that is scrolled about, px from its top left. */
export interface SightLayout extends Extent {
  /** What is zoomed: one step of the grid. */
  readonly size: number;
  readonly step: { readonly across: number; readonly down: number };
  /** Of the first knot. */
  readonly left: number;
  readonly top: number;
  /** Room that is taken beside and above the knots. */
  readonly gutter: number;
  readonly header: number;
  boxOf(place: Place): Box;
  placeAt(x: number, y: number): Place;
}

/** What is in sight at a moment. */
export interface Frame {
  readonly scroll: { readonly left: number; readonly top: number };
  readonly view: Extent;
  /** Device px in a px. */
  readonly dpr: number;
  readonly inks: Inks;
}

/** What a sheet shows. */
export interface Shown<Layout extends SightLayout> {
  /** The knot that has the cursor. */
  readonly here: Place;
  /**
   * Lays it out; null while there is nothing.
   *
   * @param size px; null for what suits the room
   */
  layOut(view: Extent, size: number | null): Layout | null;
  /** A size within what it may be. */
  withinSizes(size: number): number;
  paint(ctx: CanvasRenderingContext2D, layout: Layout, frame: Frame): void;
  /** The sheet was scrolled. */
  scrolled?(): void;
}

/**
 * What is in sight of a sheet that is scrolled about and zoomed: painted, once in a frame, on a
 * canvas that stays in place while the sheet is scrolled below it, with the cursor over it.
 */
export class Sight<Layout extends SightLayout> {
  /** What takes hand and keys. */
  readonly window = box('sheet-frame');
  private readonly extent = box('sheet-extent');
  private readonly canvas = document.createElement('canvas');
  private laid: Layout | null = null;
  /** px; null for what suits the room. */
  private size: number | null = null;
  private inks: Inks | null = null;
  private frame = 0;
  private sizes: ResizeObserver | null = null;
  private readonly themes = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(
    (query) => matchMedia(query),
  );

  constructor(
    private readonly sheet: HTMLElement,
    private readonly cursor: Cursor,
    private readonly shown: Shown<Layout>,
  ) {}

  /** @param below lies on the sheet, below what is painted */
  connect(...below: readonly HTMLElement[]): void {
    const { sheet, canvas, cursor } = this;
    sheet.classList.add('sheet');
    canvas.className = 'sheet-canvas';
    canvas.setAttribute('aria-hidden', 'true');
    this.window.append(canvas, cursor.element);
    this.extent.append(...below, this.window);
    sheet.replaceChildren(this.extent);
    sheet.addEventListener('scroll', this.onScroll, { passive: true });
    cursor.grid.addEventListener('focusin', this.onFocus);
    for (const theme of this.themes) theme.addEventListener('change', this.onTheme);
    this.sizes = new ResizeObserver(() => this.layOut());
    this.sizes.observe(sheet);
  }

  disconnect(): void {
    this.sizes?.disconnect();
    this.sizes = null;
    this.sheet.removeEventListener('scroll', this.onScroll);
    this.cursor.grid.removeEventListener('focusin', this.onFocus);
    for (const theme of this.themes) theme.removeEventListener('change', this.onTheme);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
  }

  get layout(): Layout | null {
    return this.laid;
  }

  /** Something else is shown: in the size that suits it, from its first knot. */
  reset(): void {
    this.size = null;
    this.sheet.scrollTo(0, 0);
  }

  private readonly onScroll = (): void => {
    this.shown.scrolled?.();
    this.wake();
  };

  private readonly onFocus = (): void => this.reveal();

  private readonly onTheme = (): void => {
    this.inks = null;
    this.wake();
  };

  // ---- painting ----

  /** Paints with the next frame. */
  wake(): void {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.paint();
    });
  }

  private paint(): void {
    const { canvas, laid: layout, scroll, sheet } = this;
    const view = this.view();
    const ctx = memoryContext(canvas);
    if (layout === null || ctx === null || view.height === 0) return;
    const dpr = Math.max(1, Math.min(MOST_DPR, devicePixelRatio));
    const [width, height] = [Math.round(view.width * dpr), Math.round(view.height * dpr)];
    if (canvas.width !== width || canvas.height !== height) {
      Object.assign(canvas, { width, height });
    }
    this.inks ??= inksOf(sheet);
    this.shown.paint(ctx, layout, { scroll, view, dpr, inks: this.inks });
    this.placeCursor();
    // For whoever waits until the picture is there.
    canvas.dataset['painted'] = String(Number(canvas.dataset['painted'] ?? 0) + 1);
  }

  placeCursor(): void {
    const { laid, scroll, shown } = this;
    if (laid !== null) this.cursor.place(laid, shown.here, scroll);
  }

  // ---- size ----

  private view(): Extent {
    return { width: this.sheet.clientWidth, height: this.sheet.clientHeight };
  }

  private get scroll(): { readonly left: number; readonly top: number } {
    return { left: this.sheet.scrollLeft, top: this.sheet.scrollTop };
  }

  layOut(): void {
    const view = this.view();
    if (view.width === 0) return;
    let layout = this.set(view);
    if (layout === null) return;
    // Scroll bars that have come or gone leave another room.
    const left = this.view();
    if (left.width !== view.width || left.height !== view.height) layout = this.set(left);
    this.laid = layout;
    const { width, height } = this.view();
    this.window.style.width = `${width}px`;
    this.window.style.height = `${height}px`;
    this.wake();
  }

  private set(view: Extent): Layout | null {
    const layout = this.shown.layOut(view, this.size);
    if (layout !== null) {
      this.extent.style.width = `${layout.width}px`;
      this.extent.style.height = `${layout.height}px`;
    }
    return layout;
  }

  /** A step larger or smaller, about the knot that has the cursor if that is in sight. */
  zoomBy(way: 1 | -1): void {
    const { laid, scroll, shown } = this;
    if (laid === null) return;
    const view = this.view();
    const { left, top } = this.sheet.getBoundingClientRect();
    const { x, y, width, height } = laid.boxOf(shown.here);
    const inSight = (at: number, size: number): number => (at > 0 && at < size ? at : size / 2);
    this.zoomAt(
      way > 0 ? STEP.larger : STEP.smaller,
      left + inSight(x + width / 2 - scroll.left, view.width),
      top + inSight(y + height / 2 - scroll.top, view.height),
    );
  }

  /** All across in sight, where that leaves knots to be seen. */
  fit(): void {
    this.size = null;
    this.layOut();
    this.reveal();
  }

  /** Zooms about a point of the page's window. */
  zoomAt(factor: number, clientX: number, clientY: number): void {
    const before = this.laid;
    if (before === null) return;
    const next = this.shown.withinSizes(before.size * factor);
    if (next === before.size) return;
    const point = this.pointAt(clientX, clientY);
    const across = (point.x - before.left) / before.step.across;
    const down = (point.y - before.top) / before.step.down;
    const { left, top } = this.scroll;
    this.size = next;
    this.layOut();
    const after = this.laid ?? before;
    this.sheet.scrollTo(
      after.left + across * after.step.across - (point.x - left),
      after.top + down * after.step.down - (point.y - top),
    );
  }

  // ---- places ----

  /** The place at a point of the page's window; may be beside the knots. */
  placeAt(clientX: number, clientY: number): Place {
    const { x, y } = this.pointAt(clientX, clientY);
    return this.laid?.placeAt(x, y) ?? { row: 0, column: 0 };
  }

  /** From the sheet's top left. */
  private pointAt(clientX: number, clientY: number): { readonly x: number; readonly y: number } {
    const { sheet } = this;
    const { left, top } = sheet.getBoundingClientRect();
    return {
      x: clientX - left - sheet.clientLeft + sheet.scrollLeft,
      y: clientY - top - sheet.clientTop + sheet.scrollTop,
    };
  }

  /** Brings the knot that has the cursor into sight. */
  reveal(): void {
    const { laid, shown, sheet } = this;
    if (laid === null) return;
    const { x, y, width, height } = laid.boxOf(shown.here);
    const view = this.view();
    const beside = laid.gutter + width;
    const above = laid.header + height;
    sheet.scrollTo({
      left: shifted(x, width, sheet.scrollLeft, beside, view.width - beside),
      top: shifted(y, height, sheet.scrollTop, above, view.height - 2 * height),
    });
  }
}

/** Where to scroll so that a stretch lies between two lines of the view. */
function shifted(from: number, size: number, at: number, first: number, end: number): number {
  if (from < at + first) return Math.max(0, from - first);
  return from + size > at + end ? from + size - end : at;
}

export function box(className: string): HTMLElement {
  const element = document.createElement('div');
  element.className = className;
  return element;
}
