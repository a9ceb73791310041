import { type Chart, coloursUsed, type EdgeTechnique, type StartSide } from '../chart/chart.js';
import { LONG_FLOAT } from '../verify/verify.js';
import { countOf } from './count.js';
import { type Effort, type EffortOptions, effortOf, USUAL_PACE } from './effort.js';
import { MIRRORINGS, type Mirroring, mirroredChart } from './mirror.js';

export interface BestWayOptions extends EffortOptions {
  /** The edge technique, which is kept. Default: what the chart asks for, else straight. */
  readonly edge?: EdgeTechnique;
  /** The side that is started from now. Default: what the chart asks for, else left. */
  readonly start?: StartSide;
  /** Whether the drawing may be mirrored: letters and numbers would read the wrong way round. */
  readonly mayMirror?: boolean;
  /** Knots planned and verified so that every way is proven. Default: 3 million. */
  readonly work?: number;
}

const USUAL_WORK = 3_000_000;

/** One way to knot a chart, and what it costs. */
export interface Way {
  readonly start: StartSide;
  readonly mirroring: Mirroring;
  /**
   * Whether planning and verifying showed that it knots out so, or that it does not; or whether
   * it was only counted from the drawing, because the chart is large and it is not the best way.
   */
  readonly state: 'proven' | 'wrong' | 'counted';
  readonly effort: Effort;
}

export interface BestWay {
  readonly edge: EdgeTechnique;
  /** As it is knotted now. */
  readonly current: Way;
  /** Of the ways that knot out as drawn; the current one where none is better. */
  readonly best: Way;
  /** All that were tried, the best first. */
  readonly ways: readonly Way[];
}

/**
 * The best of all ways to start a chart and, when allowed, to mirror it: with the fewest colour
 * changes, then with the least float. What each costs is counted; the current and the best way are
 * planned and verified, and so are all others where that is not too much work. Where ways are
 * alike, the drawing as it is and the side of now come first.
 */
export function bestWay(chart: Chart, options: BestWayOptions = {}): BestWay {
  const edge = options.edge ?? chart.edge ?? 'straight';
  const start = options.start ?? chart.start ?? 'left';
  const starts: readonly StartSide[] = start === 'left' ? ['left', 'right'] : ['right', 'left'];
  const mirrorings = options.mayMirror === true ? MIRRORINGS : MIRRORINGS.slice(0, 1);
  const counted = mirrorings.flatMap((mirroring) => {
    const drawing = mirroredChart(chart, mirroring);
    return starts.map((side) => countedWay(drawing, side, mirroring, options));
  });
  const proven = (way: Way): Way => provenWay(chart, edge, way, options);
  const current = proven(counted[0] as Way);
  // Stable, so that of ways that are alike the one tried first stays first.
  const ranked = counted.map((way, i) => (i === 0 ? current : way)).sort(compareWays);
  const everyOne = chart.cells.length * counted.length <= (options.work ?? USUAL_WORK);
  let found = false;
  const tried = ranked.map((way) => {
    const known = way.state !== 'counted' || (found && !everyOne) ? way : proven(way);
    found ||= known.state === 'proven';
    return known;
  });
  const ways = tried.sort(compareWays);
  const best = ways.find(({ state }) => state === 'proven') ?? current;
  return { edge, current, best, ways };
}

function countedWay(
  drawing: Chart,
  start: StartSide,
  mirroring: Mirroring,
  { longFloat = LONG_FLOAT, pace = USUAL_PACE }: BestWayOptions,
): Way {
  const knots = drawing.cells.length;
  const count = countOf(drawing, start, longFloat);
  const seconds = 2 * knots * pace.halfHitch + count.changes * pace.change;
  const effort = { knots, ...count, leads: coloursUsed(drawing), seconds };
  return { start, mirroring, state: 'counted', effort };
}

function provenWay(chart: Chart, edge: EdgeTechnique, way: Way, options: BestWayOptions): Way {
  const { start, mirroring } = way;
  const { ok, effort } = effortOf(mirroredChart(chart, mirroring), { edge, start }, options);
  return { start, mirroring, state: ok ? 'proven' : 'wrong', effort };
}

function compareWays(one: Way, other: Way): number {
  return (
    Number(one.state === 'wrong') - Number(other.state === 'wrong') ||
    one.effort.changes - other.effort.changes ||
    inMillionths(one.effort.floatKnots) - inMillionths(other.effort.floatKnots)
  );
}

/** Sums of roots differ in their last digits by the order in which they were added up. */
function inMillionths(knots: number): number {
  return Math.round(knots * 1e6);
}
