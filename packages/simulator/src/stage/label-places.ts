import { type Camera, projector } from '../thread/camera.js';
import type { Box, ThreadLabel, ThreadLine } from '../thread/thread-line.js';

export interface LabelPlace {
  /** What the string does, as a key of the messages, or what it is called. */
  readonly label: { readonly does: ThreadLabel } | { readonly name: string };
  /** Pixels from the top left: where the label's near end goes. */
  readonly x: number;
  readonly y: number;
  /** Whether the label lies to the left of that place, to its right, or has its middle there. */
  readonly lies: 'left' | 'right' | 'across';
}

/** Pixels from a label across its string to the next one below. */
const BELOW = 24;

/** Pixels between a string and its label. */
const GAP = 6;

/**
 * Where the labels of the strings go: of two strings the left one is named on its left, so that no
 * label lies on the other string.
 */
export function labelPlaces(
  lines: readonly ThreadLine[],
  box: Box,
  camera: Camera,
  width: number,
  height: number,
): LabelPlace[] {
  const project = projector(camera, width, height);
  const [top, end, on] = (['top', 'end', 'on'] as const).map((where) =>
    lines.flatMap((line) => {
      if (line.labelAt !== where) return [];
      if (line.label === null && line.name === undefined) return [];
      const anchor = where === 'top' ? highest(line, box) : lastSeen(line, box);
      if (anchor === null) return [];
      const at = project(anchor[0], anchor[1], anchor[2]);
      const label =
        line.name === undefined ? { does: line.label as ThreadLabel } : { name: line.name };
      return [{ label, x: at.x, y: at.y, half: (line.diameter / 2) * at.scale }];
    }),
  ) as [Anchor[], Anchor[], Anchor[]];
  const placed = (here: Anchor[], others: readonly Anchor[]): LabelPlace[] =>
    here
      .sort((one, other) => one.x - other.x)
      .map(({ label, x, y, half }, i) => {
        const leftward =
          here.length > 1 ? i < here.length / 2 : others.some((other) => other.x > x);
        return leftward
          ? { label, x: x - half - GAP, y, lies: 'left' }
          : { label, x: x + half + GAP, y, lies: 'right' };
      });
  // One below the other, so that none covers the next, however long its name.
  const across = on
    .sort((one, other) => other.x - one.x)
    .map(({ label, x, y }, i): LabelPlace => ({ label, x, y: y + i * BELOW, lies: 'across' }));
  return [...placed(top, end), ...placed(end, top), ...across];
}

interface Anchor extends Omit<LabelPlace, 'lies'> {
  /** Half of the string's width, px. */
  readonly half: number;
}

type Point = readonly [number, number, number];

function highest(line: ThreadLine, box: Box): Point | null {
  const { points } = line;
  const top = box.max[1] - 0.06 * (box.max[1] - box.min[1]);
  for (let i = 0; i + 2 < points.length; i += 3) {
    const y = points[i + 1] as number;
    if (y <= top) return [points[i] as number, y, points[i + 2] as number];
  }
  return null;
}

/** The free end, or where the string that leads to it leaves the picture. */
function lastSeen(line: ThreadLine, box: Box): Point | null {
  const { points } = line;
  const bottom = box.min[1] + 0.14 * (box.max[1] - box.min[1]);
  for (let i = points.length - 3; i >= 0; i -= 3) {
    const y = points[i + 1] as number;
    if (y >= bottom) return [points[i] as number, y, points[i + 2] as number];
  }
  return null;
}
