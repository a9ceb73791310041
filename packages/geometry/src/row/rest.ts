import type { KnotEnd } from '../knot/finished.js';
import { comesBack, exitOf } from './layout.js';
import type { FinishedPath } from './lead-path.js';
import { hanging, laidAside, resting, takenBehind } from './routes.js';
import { passageOf, type Setting } from './setting.js';

/** The free part of a lead that does not tie: in front, on its way, or parked at the back. */
export function restOf(setting: Setting, path: FinishedPath, id: string): Float64Array {
  const { layout, options, scene, index, phase, progress } = setting;
  const d = options.diameter;
  const { points, last } = path;
  const n = points.length;
  const exit: KnotEnd = {
    at: [points[n - 3]!, points[n - 2]!, points[n - 1]!],
    heading: exitOf(layout, last).heading,
  };
  const front = hanging(exit, comesBack(last), d);
  const aside = laidAside(exit, d);
  const back = takenBehind(exit, passageOf(setting));
  const length = options.tail * d;
  const current = scene.knots[index]!;
  const f = progress * progress * (3 - 2 * progress);
  if (current.change?.oldLead !== id) return resting(exit, back, back, 1, length, d);
  switch (phase) {
    case 'lay-aside':
      return resting(exit, front, aside, f, length, d);
    case 'pass-behind':
    case 'take-down':
      return resting(exit, front, back, f, length, d);
    case 'lay-through':
      return resting(exit, aside, back, f, length, d);
    case 'first-half':
      return current.change.how === 'laid-through'
        ? resting(exit, aside, aside, 1, length, d)
        : resting(exit, back, back, 1, length, d);
    case 'second-half':
      return resting(exit, back, back, 1, length, d);
  }
}
