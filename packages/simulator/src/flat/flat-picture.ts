import { type Camera, projector } from '../thread/camera.js';
import { lengthsAlong } from '../thread/nearness.js';
import type { Spotlight, ThreadLine, ThreadPart } from '../thread/thread-line.js';

/** One short piece of thread; drawn in the order given, nearer pieces cover those before. */
export interface FlatPiece {
  readonly string: string;
  readonly part: ThreadPart;
  readonly colour: string;
  /** SVG path data in pixels, reaching a little into the pieces beside it. */
  readonly path: string;
  /** The same, reaching less far, for the outline: its ends must not show through. */
  readonly outline: string;
  /** Width of the thread there in pixels. */
  readonly width: number;
  /** Distance from the camera in mm. */
  readonly depth: number;
  /** Path data of a mark across the piece; empty where it has none. */
  readonly mark: string;
  /** Whether the thread ends with it, round. */
  readonly end: boolean;
  /** Whether it lies outside the spotlight. */
  readonly faded: boolean;
}

/** Length of a piece in diameters: short, so that each has one depth, and crossings come right. */
const PIECE = 0.7;
/** How far a piece reaches into those beside it, in diameters, so that no gap shows at a bend. */
const OVERLAP = 0.16;
/** How far its outline does: enough for the rims to meet at a bend, and covered by the piece. */
const RIM_OVERLAP = 0.1;

/**
 * The same threads as the 3D picture draws, projected with the same camera and cut into short
 * pieces from the farthest to the nearest. Drawn each with an outline, over covers under.
 */
export function flatPicture(
  lines: readonly ThreadLine[],
  camera: Camera,
  width: number,
  height: number,
  spotlight?: Spotlight,
): FlatPiece[] {
  const project = projector(camera, width, height);
  const pieces: FlatPiece[] = [];
  for (const line of lines) {
    const count = line.points.length / 3;
    const lengths = lengthsAlong(line.points);
    const seen = Array.from({ length: count }, (_, i) =>
      project(
        line.points[3 * i] as number,
        line.points[3 * i + 1] as number,
        line.points[3 * i + 2] as number,
      ),
    );
    let start = 0;
    let number = 0;
    for (let i = 1; i < count; i++) {
      const long = (lengths[i] as number) - (lengths[start] as number);
      if (long < PIECE * line.diameter && i < count - 1) continue;
      const within = seen.slice(start, i + 1);
      const reach = OVERLAP * line.diameter;
      let from = start;
      while (from > 0 && (lengths[start] as number) - (lengths[from] as number) < reach) from--;
      let to = i;
      while (to < count - 1 && (lengths[to] as number) - (lengths[i] as number) < reach) to++;
      const rim = RIM_OVERLAP * line.diameter;
      const outline = [
        ...(start > 0 ? [pointAt(seen, lengths, start - 1, (lengths[start] as number) - rim)] : []),
        ...within,
        ...(i < count - 1 ? [pointAt(seen, lengths, i, (lengths[i] as number) + rim)] : []),
      ];
      const depth = within.reduce((sum, point) => sum + point.depth, 0) / within.length;
      const scale = within.reduce((sum, point) => sum + point.scale, 0) / within.length;
      const thick = line.diameter * scale;
      if (within.some((p) => inPicture(p, width, height, thick))) {
        pieces.push({
          string: line.string,
          part: line.part,
          colour: line.colour,
          path: pathOf(seen.slice(from, to + 1)),
          outline: pathOf(outline),
          width: thick,
          depth,
          faded: isFaded(line.points, start, spotlight),
          end: start === 0 || i === count - 1,
          mark: isMarked(line.part, number) ? markAcross(within, thick) : '',
        });
      }
      number++;
      start = i;
    }
  }
  return pieces.sort((one, other) => other.depth - one.depth);
}

/** The point so far along the thread, on the line that begins at a point of it, or at its ends. */
function pointAt(
  points: readonly { x: number; y: number }[],
  lengths: Float32Array,
  at: number,
  along: number,
): { x: number; y: number } {
  const from = points[at] as { x: number; y: number };
  const to = points[at + 1] as { x: number; y: number };
  const [start, end] = [lengths[at] as number, lengths[at + 1] as number];
  const share = Math.min(1, Math.max(0, (along - start) / (end - start || 1)));
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

function pathOf(points: readonly { x: number; y: number }[]): string {
  return points
    .map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
    .join('');
}

function isFaded(points: Float32Array, point: number, spotlight: Spotlight | undefined): boolean {
  if (spotlight === undefined) return false;
  // Only across the row: the strings of the knot being tied hang down from it.
  return Math.abs((points[3 * point] as number) - spotlight.at[0]) > 1.4 * spotlight.radius;
}

function isMarked(part: ThreadPart, number: number): boolean {
  if (part === 'tying') return number % 2 === 0;
  return part === 'old-lead' && number % 6 < 3;
}

function inPicture(
  p: { x: number; y: number },
  width: number,
  height: number,
  margin: number,
): boolean {
  return p.x > -margin && p.y > -margin && p.x < width + margin && p.y < height + margin;
}

/** A short slanting stroke, as a yarn of the lay would show. */
function markAcross(points: readonly { x: number; y: number }[], thick: number): string {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined) return '';
  const dx = last.x - first.x;
  const dy = last.y - first.y;
  const long = Math.hypot(dx, dy);
  if (long < 0.3 * thick) return '';
  const ax = (dx / long) * 0.2 * thick;
  const ay = (dy / long) * 0.2 * thick;
  const cx = (first.x + last.x) / 2;
  const cy = (first.y + last.y) / 2;
  const sx = (-dy / long) * 0.34 * thick;
  const sy = (dx / long) * 0.34 * thick;
  const at = (x: number, y: number): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
  return `M${at(cx - sx - ax, cy - sy - ay)}L${at(cx + sx + ax, cy + sy + ay)}`;
}
