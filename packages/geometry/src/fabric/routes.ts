import { directionOf, type StartSide } from '@halfhitch/core';
import { comingUp, PASSING, PASSING_DOWN, passingBehind } from './links.js';
import type { Seating } from './seating.js';
import type { BackStretches } from './survey.js';

/** How far tails hang down at the back, in tying diameters. */
export const BACK_TAIL = 9;

/** Distance from the middle of a row at which a float runs along it, clear of what passes there. */
const LANE = 1.5;

/** Two strands side by side, with a little air. */
export const BESIDE = 1.02;

/** The choices for a stretch, best first, as seen from the back: flat polylines x, y, x, y, ... */
export type Flat = readonly number[];

/** Where a stretch behind the work may run. The first choice is what a thread pulled straight does. */
export class Routes {
  /** Choices that `flat` knows for every stretch. */
  static readonly CHOICES = 5;

  constructor(
    private readonly stretches: BackStretches,
    private readonly seating: Seating,
    private readonly columns: number,
    private readonly start: StartSide,
  ) {}

  fromPoint(id: number): readonly [number, number] | null {
    const place = this.stretches.from(id);
    if (place === null) return null;
    const route = this.stretches.route(id);
    const below =
      route === 'down'
        ? PASSING_DOWN
        : route === 'behind'
          ? passingBehind(this.stretches.fromKind(id))
          : PASSING;
    return [this.across(place.gap), place.row * this.seating.rowHeight + below];
  }

  toPoint(id: number): readonly [number, number] | null {
    const place = this.stretches.to(id);
    if (place === null) return null;
    return [
      this.across(place.gap),
      place.row * this.seating.rowHeight - comingUp(this.stretches.toKind(id)),
    ];
  }

  /** The tail's tip comes first for a lead that begins, last for one that stays at the back. */
  flat(id: number, choice: number): Flat {
    const from = this.fromPoint(id);
    const to = this.toPoint(id);
    const place = this.stretches.from(id) ?? this.stretches.to(id)!;
    if (from !== null && to !== null) return this.float(from, to, choice, place.row);
    if (from !== null) return this.hanging(from, choice, place.row);
    const down = this.hanging(to!, choice, place.row);
    const out: number[] = [];
    for (let i = down.length - 2; i >= 0; i -= 2) out.push(down[i]!, down[i + 1]!);
    return out;
  }

  private across(gap: number): number {
    return (gap - 0.5) * this.seating.pitch;
  }

  /** Whether a place is beside the piece: what starts there stays behind the work from then on. */
  private isOutside(x: number): boolean {
    return x < 0 || x > (this.columns - 1) * this.seating.pitch;
  }

  /** Towards the middle of the piece; from the very middle, against the way of the row. */
  private inward(x: number, row: number): number {
    const beyond = x - ((this.columns - 1) * this.seating.pitch) / 2;
    if (Math.abs(beyond) > 1e-6) return beyond > 0 ? -1 : 1;
    return directionOf(this.start, row) === 'right' ? -1 : 1;
  }

  /** A tail hangs behind the nearest base string, not in the gap, where others pass. */
  private hanging([x, y]: readonly [number, number], choice: number, row: number): Flat {
    const half = this.seating.pitch / 2;
    const inward = this.inward(x, row);
    const outward = this.isOutside(x) ? 1 : -1;
    const aside = [half, half * outward, half * 0.6, half * 0.6 * outward, 0][choice]! * inward;
    return [x, y, x + aside, y + 1.6, x + aside, y + BACK_TAIL];
  }

  private float(
    [x0, y0]: readonly [number, number],
    [x1, y1]: readonly [number, number],
    choice: number,
    row: number,
  ): Flat {
    const { pitch, rowHeight } = this.seating;
    const straight = [x0, y0, x1, y1];
    const half = pitch / 2;
    if (Math.abs(y1 - y0) < rowHeight / 2) {
      const gaps = Math.round(Math.abs(x1 - x0) / pitch);
      if (gaps === 0) return straight;
      // Out of the gap and into the other one sideways: above or below it another may pass.
      const a = x0 + Math.sign(x1 - x0) * half;
      const b = x1 - Math.sign(x1 - x0) * half;
      const lanes = gaps < 2 ? [0, 1, -1, 0.6, -0.6] : [1, -1, 0, 0.7, -0.7];
      const lane = lanes[choice]!;
      const middle = (y0 + y1) / 2 + lane * LANE;
      if (lane === 0) return [x0, y0, a, y0, b, y1, x1, y1];
      return [x0, y0, a, y0, a, middle, b, middle, b, y1, x1, y1];
    }
    // Where it would run down a gap it lies behind the base string beside it instead.
    const steep = Math.abs(x1 - x0) < pitch * 1.5;
    const inward = this.inward((x0 + x1) / 2, row);
    const out = this.isOutside(x0) || this.isOutside(x1) ? 1 : -1;
    const aside = (
      steep
        ? [half, out * half, 0, half * 0.6, out * half * 0.6]
        : [0, half, out * half, pitch, out * pitch]
    )[choice]!;
    if (aside === 0) return straight;
    const shift = aside * inward;
    const down = Math.sign(y1 - y0) * Math.min(1.4, Math.abs(y1 - y0) / 3);
    return [x0, y0, x0 + shift, y0 + down, x1 + shift, y1 - down, x1, y1];
  }
}
