import { directionOf, type StartSide } from '@halfhitch/core';
import { floatLane, outsideOf, type Pass, type Passes } from './passes.js';
import type { Seating } from './seating.js';
import type { BackPlace, BackStretches } from './survey.js';

/** How far tails hang down at the back, in tying diameters. */
const BACK_TAIL = 9;

/** Nothing else goes through a gap between places that are no further apart than this. */
const PASSES_CLOSE = 1.1;

/** Choices in which a thread goes aside slanting, and not square to the gap past what is near. */
const SLANTS: readonly boolean[] = [true, false, false, true, false];

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
    private readonly passes: Passes,
    private readonly start: StartSide,
  ) {}

  fromPoint(id: number): readonly [number, number] | null {
    const place = this.stretches.from(id);
    if (place === null) return null;
    return this.point(place, this.stretches.route(id) ?? 'down');
  }

  toPoint(id: number): readonly [number, number] | null {
    const place = this.stretches.to(id);
    return place === null ? null : this.point(place, this.stretches.upPass(id));
  }

  private point({ row, gap }: BackPlace, pass: Pass): readonly [number, number] {
    const lane = this.passes.lane(row, gap, pass, this.seating);
    return [this.across(gap), row * this.seating.rowHeight + lane];
  }

  /** The tail's tip comes first for a lead that begins, last for one that stays at the back. */
  flat(id: number, choice: number): Flat {
    const from = this.fromPoint(id);
    const to = this.toPoint(id);
    const place = this.stretches.from(id) ?? this.stretches.to(id)!;
    if (from !== null && to !== null) {
      return this.float(from, to, choice, place.row, this.stretches.to(id)!.row);
    }
    if (from !== null) return this.hanging(from, choice, place.row);
    const down = this.hanging(to!, choice, place.row);
    const out: number[] = [];
    for (let i = down.length - 2; i >= 0; i -= 2) out.push(down[i]!, down[i + 1]!);
    return out;
  }

  private across(gap: number): number {
    const { pitch } = this.seating;
    if (gap <= 0) return -outsideOf(this.seating);
    if (gap >= this.columns) return (this.columns - 1) * pitch + outsideOf(this.seating);
    return (gap - 0.5) * pitch;
  }

  private get columns(): number {
    return this.passes.columns;
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
    const side = [1, 1, outward, outward, 0.5][choice]! * half * inward;
    const drop = SLANTS[choice]! ? 1.6 : 0;
    return [x, y, x + side, y + drop, x + side, y + BACK_TAIL];
  }

  /** Up or down one gap, past what may go through it in between. */
  private upTheGap(
    [x0, y0]: readonly [number, number],
    [x1, y1]: readonly [number, number],
    choice: number,
    row: number,
  ): Flat {
    const close = Math.abs(y1 - y0) < PASSES_CLOSE;
    const sides = close ? [0, 1, -1, 0.7, -0.7] : [1, -1, 0.7, -0.7, 0];
    const side = sides[choice]! * this.inward((x0 + x1) / 2, row);
    if (side === 0) return [x0, y0, x1, y1];
    const aside = x0 + (side * this.seating.pitch) / 2;
    return [x0, y0, aside, y0, aside, y1, x1, y1];
  }

  private float(
    [x0, y0]: readonly [number, number],
    [x1, y1]: readonly [number, number],
    choice: number,
    row: number,
    toRow: number,
  ): Flat {
    const { pitch, rowHeight } = this.seating;
    const gaps = Math.round(Math.abs(x1 - x0) / pitch);
    const half = pitch / 2;
    if (toRow === row && gaps === 0) return this.upTheGap([x0, y0], [x1, y1], choice, row);
    // Out of the gap and into the other one sideways: above or below it another may pass.
    const a = x0 + Math.sign(x1 - x0) * half;
    const b = x1 - Math.sign(x1 - x0) * half;
    const along = (y: number): Flat => [x0, y0, a, y0, a, y, b, y, b, y1, x1, y1];
    const lane = row * rowHeight + floatLane(this.seating);
    if (toRow === row) {
      const up = (gaps < 2 ? [null, 0, 1, -1, 2] : [0, 1, null, -1, 2])[choice];
      return up == null ? [x0, y0, a, y0, b, y1, x1, y1] : along(lane - up * rowHeight);
    }
    if (toRow === row + 1 && gaps > 1 && choice < 3)
      return along(lane + [0, 1, -1][choice]! * rowHeight);
    const inward = this.inward((x0 + x1) / 2, row);
    const out = this.isOutside(x0) || this.isOutside(x1) ? 1 : -1;
    // Where it would run down a gap it lies behind the base string beside it instead.
    if (gaps < 2) {
      if (gaps === 1 && choice === 0) return [x0, y0, a, y0, a, y1, x1, y1];
      if (gaps === 1 && choice === 1) return [x0, y0, x1, y1];
      const side = [1, 1, out, out, 0.5][choice]! * half * inward;
      return shifted([x0, y0], [x1, y1], side, SLANTS[choice]!);
    }
    if (choice === 0 || (toRow === row + 1 && choice === 3)) return [x0, y0, x1, y1];
    if (choice < 3)
      return shifted([x0, y0], [x1, y1], (choice === 1 ? half : out * half) * inward, true);
    return along(choice === 3 ? lane : lane + (toRow - row - 1) * rowHeight);
  }
}

/** A way beside the straight one, `aside` of it. */
function shifted(
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  aside: number,
  slants: boolean,
): Flat {
  const down = slants ? Math.sign(y1 - y0) * Math.min(1.4, Math.abs(y1 - y0) / 3) : 0;
  return [x0, y0, x0 + aside, y0 + down, x1 + aside, y1 - down, x1, y1];
}
