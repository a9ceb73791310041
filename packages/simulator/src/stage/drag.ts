/** Radians for each pixel that a pointer goes. */
const RADIANS = 0.009;

/** Turns a picture by a mouse or a finger: one at a time. */
export class Drag {
  private held: { readonly id: number; x: number; y: number } | null = null;

  /**
   * @param look turns the camera, in radians
   * @param holding whether the picture is being turned
   */
  constructor(
    private readonly look: (yaw: number, pitch: number) => void,
    private readonly holding: (on: boolean) => void,
  ) {}

  readonly down = (event: PointerEvent): void => {
    if (event.button !== 0 || this.held !== null) return;
    this.held = { id: event.pointerId, x: event.clientX, y: event.clientY };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.holding(true);
  };

  readonly move = (event: PointerEvent): void => {
    const { held } = this;
    if (held === null || event.pointerId !== held.id) return;
    this.look((held.x - event.clientX) * RADIANS, (event.clientY - held.y) * RADIANS);
    held.x = event.clientX;
    held.y = event.clientY;
  };

  readonly up = (event: PointerEvent): void => {
    if (this.held?.id !== event.pointerId) return;
    this.held = null;
    this.holding(false);
  };
}
