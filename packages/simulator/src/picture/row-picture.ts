import { type KnotReading, type Plan, PlanReader } from '@halfhitch/core';
import { sceneOf } from '@halfhitch/geometry/plan';
import { type RowPose, rowPhases, rowPose } from '@halfhitch/geometry/row';
import { yUp } from '../knot/knot-lines.js';
import type { Words } from '../messages/words.js';
import { PlanRow } from '../row/plan-row.js';
import { colourOfString } from '../row/row-scene.js';
import type { Box, ThreadLine } from '../thread/thread-line.js';
import { plainColour } from './knot-picture.js';
import { PictureError, sizeOf } from './markup.js';
import { stillMarkup } from './still.js';

export interface RowPictureOptions {
  /** Default: front. */
  readonly view?: 'front' | 'back';
  /** The mirror image, as a left-handed maker ties it. */
  readonly mirror?: boolean;
  /** Knots of the row that are tied, in the order of knotting; 2.5: the third is half made. Default: all in sight. */
  readonly knots?: number;
  /** First and last column shown, from 0; default: the first 24. */
  readonly columns?: readonly [number, number];
  /** Width in CSS pixels, 16 to 4096; default 240. The height is what the row needs then. */
  readonly width?: number;
  /** Language of the words in it, such as `de`; default: English. */
  readonly lang?: string;
  /** What a screen reader calls it; default: the row and the side it is seen from. */
  readonly label?: string;
  /** Leaves out all words, for a picture whose page says them beside it. */
  readonly decorative?: boolean;
}

/** More would be too much markup for a page to bear. */
export const MOST_COLUMNS_PICTURED = 24;

/** Distance of the points that a thread is drawn through, in diameters: closer ones only weigh. */
const POINT_EVERY = 0.14;

/**
 * A still of a row of alpha work, on the row tied before it, as SVG markup: the same threads as in
 * 3D, with over and under right, made without a browser. The same options give the same markup.
 *
 * @param row from 0
 * @throws PictureError when the plan has no such row or columns, for more than 24 columns, or when a
 *   size is outside its limits
 * @throws InputError when the plan's steps cannot be done up to there
 */
export function rowPicture(plan: Plan, row: number, options: RowPictureOptions = {}): string {
  if (!Number.isInteger(row) || row < 0 || row >= plan.rows) {
    throw new PictureError(`The plan has no row ${row}; give one from 0 to ${plan.rows - 1}.`);
  }
  const columns = columnsOf(plan, options.columns);
  const reader = new PlanReader(plan);
  const reading = reader.row(row);
  const previous = row === 0 ? null : reader.row(row - 1);
  const [first, last] = columns;
  let inSight = reading.knots.length;
  for (; inSight > 0; inSight--) {
    const { column } = reading.knots[inSight - 1] as KnotReading;
    if (column >= first && column <= last) break;
  }
  const asked = options.knots ?? inSight;
  if (!Number.isFinite(asked)) throw new PictureError('The number of knots must be a number.');
  const tied = Math.max(0, Math.min(reading.knots.length, asked));
  const mirror = options.mirror ?? false;

  const at = Math.max(0, Math.ceil(tied) - 1);
  const knot = reading.knots[at] as KnotReading;
  const { scene, knots } = sceneOf(previous === null ? [reading] : [previous, reading], columns);
  const index = knots.indexOf(knot);
  if (index < 0) throw new PictureError(`Knot ${at + 1} of the row is in none of these columns.`);
  const pose = rowPose(scene, index, (tied - at) * rowPhases(scene, index).length);
  const lines = pose.strands.map(
    ({ id, points, radius }): ThreadLine => ({
      string: id,
      part: 'other',
      colour: plainColour(colourOfString(reading.before, id)),
      points: thinned(yUp(points), 2 * radius, mirror ? -1 : 1),
      diameter: 2 * radius,
      label: null,
      labelAt: 'end',
    }),
  );
  const box = boxOf(pose, previous !== null, mirror);
  const width = sizeOf('width', options.width ?? 240);
  const high = (width * (box.max[1] - box.min[1])) / (box.max[0] - box.min[0]);
  const height = sizeOf('height', high);
  const shown = new PlanRow({ reading, previous });
  const say = (words: Words) => ({
    picture: shown.pictureName(mirror, words),
    about:
      tied === reading.knots.length ? words('row.done') : shown.words(at, mirror, words).heading,
  });
  return stillMarkup({ lines, box, size: { width, height }, say }, options);
}

function columnsOf(plan: Plan, asked: RowPictureOptions['columns']): readonly [number, number] {
  const [first, last] = asked ?? [0, Math.min(plan.columns, MOST_COLUMNS_PICTURED) - 1];
  const whole = Number.isInteger(first) && Number.isInteger(last);
  if (!whole || first < 0 || last < first || last >= plan.columns) {
    throw new PictureError(
      `The plan has no columns ${first} to ${last}; give two from 0 to ${plan.columns - 1}.`,
    );
  }
  if (last - first >= MOST_COLUMNS_PICTURED) {
    throw new PictureError(`A picture shows up to ${MOST_COLUMNS_PICTURED} columns.`);
  }
  return [first, last];
}

/** The points without those that lie close on the one before. */
function thinned(points: Float32Array, diameter: number, side: number): Float32Array {
  const kept: number[] = [];
  const end = points.length - 3;
  for (let i = 0; i <= end; i += 3) {
    const [x, y, z] = [side * (points[i] as number), points[i + 1], points[i + 2]] as [
      number,
      number,
      number,
    ];
    const far =
      kept.length === 0 ||
      Math.hypot(
        x - (kept.at(-3) as number),
        y - (kept.at(-2) as number),
        z - (kept.at(-1) as number),
      ) >=
        POINT_EVERY * diameter;
    if (far || i === end) kept.push(x, y, z);
  }
  return Float32Array.from(kept);
}

/** The columns with some room, from above the row to where the strings hang below it. */
function boxOf(pose: RowPose, onRow: boolean, mirror: boolean): Box {
  const { columns, pitch, rowHeight, focus } = pose;
  const left = (columns[0] as number) - 0.95 * pitch;
  const right = (columns.at(-1) as number) + 0.95 * pitch;
  const middle = -focus[1];
  return {
    min: [mirror ? -right : left, middle - 1.45 * rowHeight, -2],
    max: [mirror ? -left : right, middle + (onRow ? 2.35 : 1.45) * rowHeight, 3],
  };
}
