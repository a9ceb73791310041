import type { Gaps } from './gaps.js';
import type { LinkAsk } from './link-ask.js';
import { backDepth, type Seating, seatedShape } from './seating.js';
import { BEAD_STEP } from './settle.js';
import type { KnotShape } from './shapes.js';

/** How far the last end is led before it hangs straight. */
const END_RUN = 3;

/** A rough way between knots with the right strands over and under it, to be settled. */
export function guessLink(seating: Seating, ask: LinkAsk, gaps: Gaps): number[] {
  const { rowHeight } = seating;
  const { way, from, around, others = [] } = ask;
  const to = seatedShape(seating, around(0, 0));
  const entry = attach(to, 'entry', 0, 0);
  const lane = ask.lane ?? 0;
  if (way === 'up') {
    const x = gaps.post(0, to.entrySide);
    return [...post(seating, x, lane, 'up'), x, lane, 0, x, lane * 0.6, 0.9, ...entry];
  }
  const before = seatedShape(seating, around(from.right, from.down));
  const ax = gaps.column(from.right);
  const ay = from.down * rowHeight;
  const exit = attach(before, 'exit', ax, ay);
  const gapOfExit = gaps.middle(from.right, before.exitSide);
  const exitHeight = exit[4]!;
  const passing = passingDepth(seating);
  // Where another lead has gone through the gap before, the turn passes in front of it.
  const past = others.length > 0;
  const turning = gapOfExit - (past ? 0.6 * before.exitSide : 0);
  const outer = past ? passing + 1 : passing;
  const away = gaps.post(from.right, before.exitSide);
  const height = ay + lane;
  switch (way) {
    case 'on': {
      const gapOfEntry = gaps.middle(0, to.entrySide);
      const join = [turning, exitHeight, outer];
      const there = from.down === 0 && Math.abs(gapOfEntry - gapOfExit) < 1e-6;
      const more = there
        ? []
        : [
            ...(past ? [turning, exitHeight + 1.2, outer] : []),
            ...[gapOfEntry, entry[1]!, passing],
          ];
      return [...exit, ...join, ...more, ...entry];
    }
    case 'through': {
      const side = to.entrySide;
      const under = seating.front + 0.02;
      const far = gaps.post(0, -side);
      return [
        ...exit,
        ...[side * 1.1, 0.2, passing + 0.5],
        ...[side * 0.6, 0.2, under],
        ...[0, 0, under],
        ...[-side * 0.6, -0.3, under],
        ...[far + side * 0.2, -1, passing],
        ...[far, Math.min(lane, -0.9), 0],
        ...post(seating, far, lane, 'down'),
      ];
    }
    case 'behind':
      return [
        ...exit,
        ...[away - before.exitSide * 0.2, height, 0.8],
        ...[away, height, 0],
        ...post(seating, away, height, 'down'),
      ];
    case 'down':
      return [
        ...exit,
        ...[turning, exitHeight + 0.4, outer],
        ...[away, height, 0.8],
        ...[away, height, 0],
        ...post(seating, away, height, 'down'),
      ];
    case 'end': {
      const y = exitHeight + END_RUN;
      const hang = [gapOfExit, y, passing, gapOfExit, y + BEAD_STEP, passing];
      return [...exit, turning, exitHeight + 0.4, outer, turning, y - 1.4, outer, ...hang];
    }
  }
}

/** Depth at which a lead passes from knot to knot, in front. */
function passingDepth({ shapes }: Seating): number {
  const { points } = shapes[0]!;
  return points[points.length - 1]!;
}

/** Two points of a way straight to or from the back. */
function post(seating: Seating, x: number, y: number, way: 'up' | 'down'): number[] {
  const depth = backDepth(seating);
  const end = [x, y, depth];
  const beyond = [x, y, depth - BEAD_STEP];
  return way === 'up' ? [...beyond, ...end] : [...end, ...beyond];
}

/** Two points of a knot, in the lead's direction, where it is held when a link is settled. */
function attach(shape: KnotShape, end: 'entry' | 'exit', x: number, y: number): number[] {
  const { points, from, to } = shape;
  // Steps of a knot's points are about half a bead's.
  const picks = end === 'exit' ? [to - 2, to] : [from, from + 2];
  return picks.flatMap((i) => [points[i * 3]! + x, points[i * 3 + 1]! + y, points[i * 3 + 2]!]);
}
