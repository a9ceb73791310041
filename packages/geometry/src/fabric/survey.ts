import { type ParkRoute, type Plan, PlanReader } from '@halfhitch/core';
import { GeometryError } from '../knot/options.js';
import { type Pass, Passes } from './passes.js';
import type { Pairs } from './seating.js';
import { endsRight, kindCode, NO_KNOT, startsRight } from './shapes.js';

/** Where a lead passes to or from the back. Gap g is left of column g. */
export interface BackPlace {
  readonly row: number;
  readonly gap: number;
}

/** Fields of a stretch behind the work; see `BackStretches`. */
const FIELDS = 7;

const ROUTES: readonly ParkRoute[] = ['through', 'behind', 'down'];

/** What became of a lead at the back, told by where it came from and where it went. */
export class BackStretches {
  private data = new Int32Array(FIELDS * 64);
  count = 0;

  add(string: number, row: number, gap: number, route: ParkRoute): number {
    return this.push(string, row, gap, ROUTES.indexOf(route), -1, -1, 0);
  }

  /** A new lead's first appearance: there is only its tail. */
  addStart(string: number, row: number, gap: number, first: boolean): number {
    return this.push(string, -1, -1, -1, row, gap, first ? 1 : 0);
  }

  comeUp(id: number, row: number, gap: number, first: boolean): void {
    this.data.set([row, gap, first ? 1 : 0], id * FIELDS + 4);
  }

  /** Place of the string in the plan's table. */
  string(id: number): number {
    return this.data[id * FIELDS]!;
  }

  from(id: number): BackPlace | null {
    const at = id * FIELDS;
    return this.data[at + 1]! < 0 ? null : { row: this.data[at + 1]!, gap: this.data[at + 2]! };
  }

  route(id: number): ParkRoute | null {
    return ROUTES[this.data[id * FIELDS + 3]!] ?? null;
  }

  to(id: number): BackPlace | null {
    const at = id * FIELDS;
    return this.data[at + 4]! < 0 ? null : { row: this.data[at + 4]!, gap: this.data[at + 5]! };
  }

  /** How it comes up: for the first knot of its row, or for another. */
  upPass(id: number): Pass {
    return this.data[id * FIELDS + 6]! === 1 ? 'first' : 'up';
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
  readonly passes: Passes;
}

/**
 * Reads a plan once, row by row, keeping only what happens at the back.
 *
 * @throws GeometryError when a knot is not on a base string
 */
export function survey(plan: Plan): Survey {
  // First of all: it looks at the size that everything here is made by.
  const reader = new PlanReader(plan);
  const pairs: Pairs = new Uint8Array(16);
  const stretches = new BackStretches();
  const passes = new Passes(plan.rows, plan.columns);
  const places = new Map(plan.strings.map(({ id }, place) => [id, place]));
  const above = new Int8Array(plan.columns).fill(NO_KNOT);
  const resting = new Map<number, number>();
  let last = { row: -1, column: 0, code: NO_KNOT };
  for (const { row, knots } of reader) {
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
      passes.addKnot(row, column, code);
      const entryRight = startsRight(code);
      if (change !== null) {
        const nearGap = column + (entryRight ? 1 : 0);
        const farGap = column + (entryRight ? 0 : 1);
        if (change.oldLead !== null) {
          const old = places.get(change.oldLead.id)!;
          const route = change.oldLeadRoute ?? 'down';
          const lastGap = last.column + (endsRight(last.code) ? 1 : 0);
          const gap = route === 'through' ? farGap : lastGap;
          const from = route === 'through' ? row : last.row;
          passes.addPass(from, gap, route);
          resting.set(old, stretches.add(old, from, gap, route));
        }
        const lead = places.get(knot.tying.id)!;
        const rested = resting.get(lead);
        const first = knot.order === 0;
        passes.addPass(row, nearGap, first ? 'first' : 'up');
        if (rested === undefined) stretches.addStart(lead, row, nearGap, first);
        else stretches.comeUp(rested, row, nearGap, first);
        resting.delete(lead);
      }
      last = { row, column, code };
    }
  }
  return { pairs, stretches, passes };
}
