import type { LinkAsk } from './link-ask.js';
import { outsideOf } from './passes.js';
import type { Seating } from './seating.js';
import { NO_KNOT } from './shapes.js';

/** Columns round a knot with the gaps between them open; 0 is the knot's own. */
export class Gaps {
  private readonly columns: readonly number[];
  private readonly hasKnot: readonly boolean[];

  constructor(
    private readonly seating: Seating,
    { around, open = [] }: LinkAsk,
  ) {
    const { pitch } = seating;
    const [a = 0, b = 0, c = 0] = open;
    this.columns = [-2 * pitch - a - b, -pitch - b, 0, pitch + c];
    this.hasKnot = [-2, -1, 0, 1].map((right) =>
      [-1, 0, 1].some((down) => around(right, down) !== NO_KNOT),
    );
  }

  column(right: number): number {
    const { pitch } = this.seating;
    if (right < -2) return this.columns[0]! + (right + 2) * pitch;
    return right > 1 ? this.columns[3]! + (right - 1) * pitch : this.columns[right + 2]!;
  }

  /** Middle of the gap beside a column. */
  middle(right: number, side: number): number {
    return (this.column(right) + this.column(right + side)) / 2;
  }

  /** Where leads pass to the back beside a column: in its gap, or beside the piece. */
  post(right: number, side: number): number {
    const inside = this.hasKnot[right + side + 2] ?? false;
    return inside ? this.middle(right, side) : this.column(right) + side * outsideOf(this.seating);
  }

  /** From a closed piece to this one. */
  spread(x: number): number {
    const { pitch, halfWidth } = this.seating;
    const right = Math.round(x / pitch);
    const beyond = x - right * pitch;
    const side = Math.sign(beyond);
    const more = Math.abs(beyond) - halfWidth;
    const at = this.column(right);
    if (more <= 0) return at + beyond;
    const opening = side * (this.column(right + side) - at) - pitch;
    return at + beyond + (side * opening * more) / (pitch - 2 * halfWidth);
  }

  /** And back. */
  closed(x: number): number {
    const { pitch, halfWidth } = this.seating;
    let right = -2;
    while (right < 1 && x > this.middle(right, 1)) right++;
    const beyond = x - this.column(right);
    const side = Math.sign(beyond);
    const more = Math.abs(beyond) - halfWidth;
    if (more <= 0) return right * pitch + beyond;
    const opening = side * (this.column(right + side) - this.column(right)) - pitch;
    if (opening <= 0) return right * pitch + beyond;
    const free = pitch - 2 * halfWidth;
    return right * pitch + side * (halfWidth + (more * free) / (free + opening));
  }
}
