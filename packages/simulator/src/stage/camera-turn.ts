export type StageView = 'front' | 'back' | 'side' | 'edge' | 'hands';

export const STAGE_VIEWS: readonly StageView[] = ['front', 'back', 'side', 'edge', 'hands'];

/**
 * Where each view looks from, in radians. `hands`: the work lies before its maker, who looks along
 * it from the loose ends.
 */
const LOOKS: Readonly<Record<StageView, { readonly yaw: number; readonly pitch: number }>> = {
  front: { yaw: 0, pitch: 0 },
  back: { yaw: Math.PI, pitch: 0 },
  side: { yaw: 0.95, pitch: 0.12 },
  edge: { yaw: Math.PI / 2, pitch: 0 },
  hands: { yaw: 0, pitch: -0.62 },
};

const MOST_PITCH = 1.2;
/** Seconds for half a turn. */
const FLIP_SECONDS = 0.6;

/** The angles the camera looks from, which turn to a view over time or are moved by hand. */
export class CameraTurn {
  yaw = 0;
  pitch = 0;
  private goal: { yaw: number; pitch: number } | null = null;

  get turning(): boolean {
    return this.goal !== null;
  }

  /** Turns to a view: at once, or by `pass`. A mirrored view of the side is from the other side. */
  to(view: StageView, mirror: boolean, atOnce: boolean): void {
    const look = LOOKS[view];
    const yaw = mirror && view !== 'back' ? -look.yaw : look.yaw;
    if (atOnce) {
      this.yaw = yaw;
      this.pitch = look.pitch;
      this.goal = null;
      return;
    }
    this.yaw = nearestTurn(this.yaw, yaw);
    this.goal = { yaw, pitch: look.pitch };
  }

  /** Turns on towards the view for the time that has passed, in seconds. */
  pass(seconds: number): void {
    const { goal } = this;
    if (goal === null) return;
    const most = (Math.PI / FLIP_SECONDS) * seconds;
    const yaw = goal.yaw - this.yaw;
    const pitch = goal.pitch - this.pitch;
    const left = Math.max(Math.abs(yaw), Math.abs(pitch));
    const share = left <= most ? 1 : most / left;
    this.yaw += yaw * share;
    this.pitch += pitch * share;
    if (share < 1) return;
    this.yaw = goal.yaw;
    this.goal = null;
  }

  by(yaw: number, pitch: number): void {
    this.goal = null;
    this.yaw += yaw;
    this.pitch = Math.max(-MOST_PITCH, Math.min(MOST_PITCH, this.pitch + pitch));
  }
}

/** The angle equal to `from` but for whole turns that is nearest to `to`. */
function nearestTurn(from: number, to: number): number {
  const turn = 2 * Math.PI;
  return to + (((((from - to) % turn) + turn + Math.PI) % turn) - Math.PI);
}
