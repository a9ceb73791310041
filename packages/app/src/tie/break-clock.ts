/** Adds up the time a maker knots without a rest, and says when one is due. */
export class BreakClock {
  /** Seconds of knotting since the last rest. */
  private active = 0;
  private put = 0;

  /**
   * @param every minutes of knotting after which a rest is due; 0 for never
   */
  constructor(public every: number) {}

  /** Seconds without a knot that count as a rest. */
  static readonly REST = 5 * 60;

  get minutes(): number {
    return Math.floor(this.active / 60);
  }

  get due(): boolean {
    return this.every > 0 && this.active >= this.every * 60 + this.put;
  }

  /** A knot came so many seconds after the one before. */
  tied(seconds: number, pause: number): void {
    if (seconds >= BreakClock.REST) this.rested();
    else if (seconds <= pause) this.active += Math.max(0, seconds);
  }

  rested(): void {
    this.active = 0;
    this.put = 0;
  }

  /** Reminds again after some more minutes of knotting. */
  later(minutes: number): void {
    this.put = this.active - this.every * 60 + minutes * 60;
  }
}
