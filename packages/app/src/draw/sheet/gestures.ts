/** What a hand does on the sheet; points are px in the page's window. */
export interface HandMoves {
  /** Whether one finger or the mouse pushes the sheet about, or draws. */
  pushes(event: PointerEvent): boolean;
  begin(x: number, y: number, event: PointerEvent): void;
  move(x: number, y: number): void;
  end(): void;
  /** A second finger has come down, or the system has taken the pointer: nothing was meant. */
  cancel(): void;
  pushBy(x: number, y: number): void;
  zoomAt(factor: number, x: number, y: number): void;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Tells drawing, pushing and pinching apart. Two fingers push and zoom, whatever one finger does. */
export class Gestures {
  private readonly down = new Map<number, Point>();
  private doing: 'nothing' | 'drawing' | 'pushing' | 'pinching' = 'nothing';

  constructor(
    private readonly element: HTMLElement,
    private readonly moves: HandMoves,
  ) {}

  listen(): void {
    const { element } = this;
    element.addEventListener('pointerdown', this.onDown);
    element.addEventListener('pointermove', this.onMove);
    element.addEventListener('pointerup', this.onUp);
    element.addEventListener('pointercancel', this.onCancel);
    element.addEventListener('wheel', this.onWheel, { passive: false });
  }

  unlisten(): void {
    const { element } = this;
    element.removeEventListener('pointerdown', this.onDown);
    element.removeEventListener('pointermove', this.onMove);
    element.removeEventListener('pointerup', this.onUp);
    element.removeEventListener('pointercancel', this.onCancel);
    element.removeEventListener('wheel', this.onWheel);
    this.drop();
  }

  /** Forgets what is going on. */
  drop(): void {
    if (this.doing === 'drawing') this.moves.cancel();
    this.doing = 'nothing';
    this.down.clear();
  }

  private readonly onDown = (event: PointerEvent): void => {
    const { button, pointerId, clientX, clientY } = event;
    if (button !== 0 && button !== 1) return;
    event.preventDefault();
    this.element.setPointerCapture(pointerId);
    this.down.set(pointerId, { x: clientX, y: clientY });
    if (this.down.size === 2) {
      if (this.doing === 'drawing') this.moves.cancel();
      this.doing = 'pinching';
    } else if (this.down.size === 1) {
      const pushes = button === 1 || this.moves.pushes(event);
      this.doing = pushes ? 'pushing' : 'drawing';
      if (!pushes) this.moves.begin(clientX, clientY, event);
    }
  };

  private readonly onMove = (event: PointerEvent): void => {
    const { pointerId, clientX: x, clientY: y } = event;
    const before = this.down.get(pointerId);
    if (before === undefined) return;
    if (this.doing === 'drawing') {
      // All points between two frames, so that a quick curve is a curve.
      const passed = event.getCoalescedEvents?.() ?? [];
      for (const { clientX, clientY } of passed) this.moves.move(clientX, clientY);
      this.moves.move(x, y);
    } else if (this.doing === 'pushing') {
      this.moves.pushBy(x - before.x, y - before.y);
    } else if (this.doing === 'pinching') {
      const other = [...this.down].find(([id]) => id !== pointerId)?.[1];
      if (other !== undefined) this.pinch(before, { x, y }, other);
    }
    this.down.set(pointerId, { x, y });
  };

  private pinch(before: Point, now: Point, other: Point): void {
    const apart = (one: Point): number => Math.hypot(one.x - other.x, one.y - other.y);
    this.moves.pushBy((now.x - before.x) / 2, (now.y - before.y) / 2);
    const was = apart(before);
    if (was < 8) return;
    this.moves.zoomAt(apart(now) / was, (now.x + other.x) / 2, (now.y + other.y) / 2);
  }

  private readonly onUp = ({ pointerId }: PointerEvent): void => {
    if (!this.down.delete(pointerId)) return;
    if (this.doing === 'drawing') this.moves.end();
    // The finger that stays after a pinch must not begin to draw.
    if (this.down.size === 0 || this.doing === 'drawing') this.doing = 'nothing';
  };

  private readonly onCancel = ({ pointerId }: PointerEvent): void => {
    if (!this.down.delete(pointerId)) return;
    if (this.doing === 'drawing') this.moves.cancel();
    if (this.down.size === 0) this.doing = 'nothing';
  };

  private readonly onWheel = (event: WheelEvent): void => {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const step = Math.max(-60, Math.min(60, event.deltaY));
    this.moves.zoomAt(Math.exp(-step / 250), event.clientX, event.clientY);
  };
}
