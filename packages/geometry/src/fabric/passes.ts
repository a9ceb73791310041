import type { Seating } from './seating.js';
import { endsRight, isClove, NO_KNOT } from './shapes.js';

/**
 * What may pass through a gap between base strings within the height of a row, to the back or to the
 * front, as bits of a set.
 */
const PASS = {
  /** A lead comes up for the first knot of the row. */
  first: 1,
  /** A lead comes up for another knot of the row. */
  up: 2,
  /** An old lead laid through a knot goes to the back. */
  through: 4,
  /** An old lead goes to the back behind the row's last knot. */
  behind: 8,
  /** An old lead goes down to the back at the turn. */
  down: 16,
} as const;

export type Pass = keyof typeof PASS;

/** In the order in which they lie in a gap, from the top. */
const ORDER: readonly Pass[] = ['through', 'first', 'up', 'behind', 'down'];

/** How far out from the outermost base string a lead passes to the back beside the piece. */
const OUTSIDE = 2.05;

/** Centre-lines of two leads in one gap are at least so far apart. */
const APART = 1.02;

/** Openings are taken larger than straight ways would need; ones too small to see are not made. */
const AIR = 0.03;
const LEAST_OPENING = 0.06;

/**
 * The same where several leads pass, by how many knots beside the gap turn their lead back into it:
 * there leads cross in front of each other, and need room to bend.
 */
const AIR_FOR_SEVERAL: readonly number[] = [AIR, 0.2, 0.35];

/**
 * Height at which one lead passes between two knots, where their wraps leave most room: a little
 * above the middle, so that below there is room for a float between it and what passes at the border.
 */
const MIDDLE = -0.17;

/** Height of rows above which wraps leave room in the middle of a gap for two leads. */
const LOOSE = 3.8;

/** Opening of a gap in which leads may pass at any height. */
const SHAFT = 1.3;

/**
 * Where leads pass through the gaps of a piece, and how far each gap must open for them. Gap g is
 * left of column g; the outermost ones are beside the piece.
 */
export class Passes {
  private readonly sets: Uint8Array;
  private readonly kinds: Int8Array;
  private readonly known = new Map<number, Site>();

  constructor(
    readonly rows: number,
    readonly columns: number,
  ) {
    this.sets = new Uint8Array(rows * (columns + 1));
    this.kinds = new Int8Array(rows * columns).fill(NO_KNOT);
  }

  addKnot(row: number, column: number, code: number): void {
    this.kinds[row * this.columns + column] = code;
  }

  addPass(row: number, gap: number, pass: Pass): void {
    const at = row * (this.columns + 1) + gap;
    this.sets[at] = this.sets[at]! | PASS[pass];
  }

  /** What passes there, as a set of `PASS`; nothing above, below or beside the piece. */
  set(row: number, gap: number): number {
    if (row < 0 || row >= this.rows || gap < 0 || gap > this.columns) return 0;
    return this.sets[row * (this.columns + 1) + gap]!;
  }

  kind(row: number, column: number): number {
    if (row < 0 || row >= this.rows || column < 0 || column >= this.columns) return NO_KNOT;
    return this.kinds[row * this.columns + column]!;
  }

  /** Whether an old lead lies under the riding turn of a knot. */
  isLifted(row: number, column: number): boolean {
    const code = this.kind(row, column);
    if (code === NO_KNOT) return false;
    return (
      (this.set(row, column + (endsRight(code) ? 1 : 0)) & PASS.through) !== 0 && isClove(code)
    );
  }

  isOutside(gap: number): boolean {
    return gap <= 0 || gap >= this.columns;
  }

  /** Height at which something passes, from the middle of the row, downwards. */
  lane(row: number, gap: number, pass: Pass, seating: Seating): number {
    return this.site(row, gap, seating).lanes[ORDER.indexOf(pass)]!;
  }

  /** How much wider than knots alone need a gap is where the row lies, in tying diameters. */
  opening(row: number, gap: number, seating: Seating): number {
    if (row < 0 || row >= this.rows || this.isOutside(gap)) return 0;
    const own = this.set(row, gap) === 0 ? 0 : this.site(row, gap, seating).opening;
    const below = this.set(row + 1, gap) === 0 ? 0 : this.site(row + 1, gap, seating).atTop;
    const above = this.set(row - 1, gap) === 0 ? 0 : this.site(row - 1, gap, seating).atBottom;
    return Math.max(own, below, above);
  }

  private site(row: number, gap: number, seating: Seating): Site {
    const set = this.set(row, gap);
    let key = set;
    for (let down = -1; down <= 1; down++) {
      for (let right = -1; right <= 0; right++) {
        key = key * 5 + this.kind(row + down, gap + right) + 1;
      }
    }
    let site = this.known.get(key);
    if (!site) {
      const beside = (right: number, down: number) => this.kind(row + down, gap + right);
      site = siteOf(set, beside, this.isOutside(gap), seating);
      this.known.set(key, site);
    }
    return site;
  }
}

interface Site {
  /** By place in ORDER. */
  readonly lanes: readonly number[];
  readonly opening: number;
  /** The part of it that what passes at the upper and the lower border of the row needs. */
  readonly atTop: number;
  readonly atBottom: number;
}

/** Kinds of the knots on both sides: right -1 or 0, down -1 to 1. */
type Beside = (right: number, down: number) => number;

function siteOf(set: number, beside: Beside, outside: boolean, seating: Seating): Site {
  const here = ORDER.filter((pass) => set & PASS[pass]);
  const cows = [beside(-1, 0), beside(0, 0)].filter((code) => code >= 2).length;
  const heights = heightsOf(here, cows, seating);
  const lanes = ORDER.map((pass) => heights[here.indexOf(pass)] ?? 0);
  const openingFor = (at: readonly number[]): number => {
    if (outside) return 0;
    if (at.length > 3) return SHAFT;
    const air = at.length > 1 ? AIR_FOR_SEVERAL[cows]! : AIR;
    const most = Math.max(0, ...at.map((y) => needed(y, beside, seating) + air));
    return most < LEAST_OPENING ? 0 : Math.min(most, SHAFT);
  };
  const near = seating.rowHeight / 2 - 1;
  return {
    lanes,
    opening: openingFor(heights),
    atTop: openingFor(heights.filter((y) => y < -near)),
    atBottom: openingFor(heights.filter((y) => y > near)),
  };
}

/**
 * Heights for what passes in a gap in one row, in its order. Wraps lie closest together a third of a
 * row above and below the middle; there is room at the middle and at the borders between rows. The
 * lower border is used only where the row below leaves its upper one free.
 */
function heightsOf(here: readonly Pass[], cows: number, seating: Seating): number[] {
  const { rowHeight } = seating;
  // Not on the border itself, where chunks may be cut.
  const border = rowHeight / 2 - 0.01;
  const loose = rowHeight > LOOSE;
  const pair = loose ? 0.51 : APART / 2;
  const [first] = here;
  // From a knot that turns back a lead leaves below its middle.
  const last = here[here.length - 1];
  const lowest = cows > 0 && (last === 'down' || last === 'behind') ? 0.3 : MIDDLE;
  switch (here.length) {
    case 0:
      return [];
    case 1:
      return [first === 'through' ? -border : lowest];
    case 2:
      return cows < 2 && first !== 'first' ? [-border, lowest] : [-pair, pair];
    case 3:
      if (cows === 0 && !loose) return [-border, MIDDLE, border];
      return [-border, -pair, pair];
    case 4:
      if (cows < 2) return [-border, -pair, pair, border];
      break;
  }
  const step = rowHeight / here.length;
  return here.map((_, i) => -border + i * step);
}

/** How far knots on both sides must be further apart for a thread to pass straight to the back. */
function needed(y: number, beside: Beside, seating: Seating): number {
  const { pitch, ratio } = seating;
  const room = (right: number): number => {
    let most = (1 + ratio) / 2;
    for (let down = -1; down <= 1; down++) {
      const shape = seating.shapes[beside(right, down)];
      if (!shape) continue;
      const { points } = shape;
      const side = right < 0 ? 1 : -1;
      for (let i = shape.from * 3; i <= shape.to * 3; i += 3) {
        if (points[i + 2]! > FRONT) continue;
        const rest = 1 - (points[i + 1]! + down * seating.rowHeight - y) ** 2;
        if (rest > 0) most = Math.max(most, side * points[i]! + Math.sqrt(rest));
      }
    }
    return most;
  };
  return room(-1) + room(0) - pitch;
}

/** In front of this a lead is on its way over the knots, no longer between them. */
const FRONT = 0.9;

/** Height, from the middle of a row, at which floats run along it: clear of what passes there. */
export const floatLane = (seating: Seating): number => (seating.rowHeight / 2 + MIDDLE) / 2;

/** Distance of a passing lead from the base string beside it, where that is the last one. */
export const outsideOf = (seating: Seating): number => OUTSIDE + (seating.ratio - 1) / 2;
