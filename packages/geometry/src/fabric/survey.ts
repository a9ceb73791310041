import { type ParkRoute, type Plan, PlanReader } from '@halfhitch/core';
import { GeometryError } from '../knot/options.js';
import type { Pairs } from './seating.js';
import { kindCode, NO_KNOT } from './shapes.js';

/** Where a lead passes to or from the back. Gap g is left of column g. */
export interface BackPlace {
  readonly row: number;
  readonly gap: number;
}

/** Fields of a stretch behind the work; see `BackStretches`. */
const FIELDS = 10;

const ROUTES: readonly ParkRoute[] = ['through', 'behind', 'down'];

/** What became of a lead at the back, told by where it came from and where it went. */
export class BackStretches {
  private data = new Int32Array(FIELDS * 64);
  count = 0;

  add(
    string: number,
    knot: number,
    row: number,
    gap: number,
    route: ParkRoute,
    kind: number,
  ): number {
    return this.push(string, knot, row, gap, ROUTES.indexOf(route), -1, -1, -1, 0, kind);
  }

  /** A new lead's first appearance: there is only its tail. */
  addStart(string: number, knot: number, row: number, gap: number, kind: number): number {
    return this.push(string, -1, -1, -1, -1, knot, row, gap, kind, 0);
  }

  comeUp(id: number, knot: number, row: number, gap: number, kind: number): void {
    this.data.set([knot, row, gap, kind], id * FIELDS + 5);
  }

  /** Place of the string in the plan's table. */
  string(id: number): number {
    return this.data[id * FIELDS]!;
  }

  /** The knot, counted in tied order, at which it leaves, or -1. */
  fromKnot(id: number): number {
    return this.data[id * FIELDS + 1]!;
  }

  from(id: number): BackPlace | null {
    const at = id * FIELDS;
    return this.data[at + 2]! < 0 ? null : { row: this.data[at + 2]!, gap: this.data[at + 3]! };
  }

  route(id: number): ParkRoute | null {
    return ROUTES[this.data[id * FIELDS + 4]!] ?? null;
  }

  /** The knot before which it comes up, or -1. */
  toKnot(id: number): number {
    return this.data[id * FIELDS + 5]!;
  }

  to(id: number): BackPlace | null {
    const at = id * FIELDS;
    return this.data[at + 6]! < 0 ? null : { row: this.data[at + 6]!, gap: this.data[at + 7]! };
  }

  /** Kind code of the knot for which it comes up. */
  toKind(id: number): number {
    return this.data[id * FIELDS + 8]!;
  }

  /** Kind code of the knot at which it leaves. */
  fromKind(id: number): number {
    return this.data[id * FIELDS + 9]!;
  }

  private push(...fields: readonly number[]): number {
    if ((this.count + 1) * FIELDS > this.data.length) {
      const more = new Int32Array(this.data.length * 2);
      more.set(this.data);
      this.data = more;
    }
    this.data.set(fields, this.count * FIELDS);
    return this.count++;
  }
}

/** What has to be known of a whole plan before any part of it can be drawn. */
export interface Survey {
  readonly pairs: Pairs;
  readonly stretches: BackStretches;
  /** Knots tied before each row; one entry more than there are rows. */
  readonly knotsBefore: Uint32Array;
}

/**
 * Reads a plan once, row by row, keeping only what happens at the back.
 *
 * @throws GeometryError when a knot is not on a base string
 */
export function survey(plan: Plan): Survey {
  const pairs: Pairs = new Uint8Array(16);
  const stretches = new BackStretches();
  const knotsBefore = new Uint32Array(plan.rows + 1);
  const places = new Map(plan.strings.map(({ id }, place) => [id, place]));
  const above = new Int8Array(plan.columns).fill(NO_KNOT);
  const resting = new Map<number, number>();
  let count = 0;
  let last = { row: 0, column: 0, exitRight: false };
  for (const { row, knots } of new PlanReader(plan)) {
    for (const knot of knots) {
      const { column, change } = knot;
      if (!(column >= 0 && column < plan.columns)) {
        throw new GeometryError(
          `In row ${row + 1} a knot is tied onto ${knot.held.id}, which is not a base string; ` +
            'only pieces knotted onto base strings can be built.',
        );
      }
      const code = kindCode(knot.kind);
      const up = above[column]!;
      if (up !== NO_KNOT) pairs[up * 4 + code] = 1;
      above[column] = code;
      const entryRight = startsRight(code);
      if (change !== null) {
        const nearGap = column + (entryRight ? 1 : 0);
        const farGap = column + (entryRight ? 0 : 1);
        if (change.oldLead !== null) {
          const old = places.get(change.oldLead.id)!;
          const route = change.oldLeadRoute ?? 'down';
          const lastGap = last.column + (last.exitRight ? 1 : 0);
          const gap = route === 'through' ? farGap : lastGap;
          const from = route === 'through' ? row : last.row;
          resting.set(old, stretches.add(old, count, from, gap, route, code));
        }
        const lead = places.get(knot.tying.id)!;
        const rested = resting.get(lead);
        if (rested === undefined) stretches.addStart(lead, count, row, nearGap, code);
        else stretches.comeUp(rested, count, row, nearGap, code);
        resting.delete(lead);
      }
      last = { row, column, exitRight: endsRight(code) };
      count++;
    }
    knotsBefore[row + 1] = count;
  }
  return { pairs, stretches, knotsBefore };
}

/** Whether a kind's lead comes in from the right: its first half is a backward one. */
const startsRight = (code: number): boolean => (code & 1) === 1;

/** Whether it leaves to the right: cloves cross over, cow hitches go back. */
const endsRight = (code: number): boolean => (code < 2 ? code === 0 : code === 3);
