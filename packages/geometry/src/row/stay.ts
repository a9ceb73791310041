import type { Place } from './lying.js';
import type { WayIn } from './routes.js';
import type { RowKnot, RowScene } from './scene.js';

/** A lead's time behind the work, between two knots that it ties. */
export interface Stay {
  readonly lead: string;
  /** Its last knot before, and the knot that it ties next, as places among the scene's knots. */
  readonly from: number | undefined;
  to: number | undefined;
  /** Layers behind the work, from 0: while it hangs, and once it lies as a float. */
  hung: number;
  float: number;
  /** How far to the right of where it went to the back it hangs, in diameters; usual if not given. */
  readonly aside?: number;
  /** Where much lies behind the work: how the lead is taken out from under it and brought up. */
  lane?: Lane;
}

/** How a lead comes up behind work where much hangs and lies, without passing through any of it. */
export interface Lane {
  /** How it comes through to the front. */
  readonly into: WayIn;
  /**
   * Height at which a lead that hangs bends to the back to be drawn out, in mm; undefined: where it went
   * to the back.
   */
  readonly drawnAt: number | undefined;
  /** Where its float bends on the way, if anywhere. */
  readonly corner: Place | undefined;
}

/** What happens to leads at a scene's knots, in order. */
export interface HandOvers {
  /** A lead comes to a knot from behind; `from` is the knot that it tied before, if any. */
  readonly comeUp: (knot: RowKnot, index: number, from: number | undefined) => void;
  /** A lead goes behind the work after its knot `from`; `knot` takes over. */
  readonly goBehind: (knot: RowKnot, lead: string, from: number) => void;
}

export function followLeads(scene: RowScene, { comeUp, goBehind }: HandOvers): void {
  const last = new Map<string, number>();
  const behind = new Set<string>();
  scene.knots.forEach((knot, i) => {
    const { change, tying } = knot;
    const leave = () => {
      const from = change && last.get(change.oldLead);
      if (from === undefined) return;
      goBehind(knot, change!.oldLead, from);
      behind.add(change!.oldLead);
    };
    // An old lead is laid through a knot whose own lead has come up; otherwise it goes first.
    if (change?.how !== 'laid-through') leave();
    if (behind.delete(tying) || (i > 0 && !last.has(tying))) comeUp(knot, i, last.get(tying));
    if (change?.how === 'laid-through') leave();
    last.set(tying, i);
  });
}
