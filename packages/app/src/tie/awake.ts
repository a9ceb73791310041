export type AwakeState =
  | 'off'
  | 'on'
  /** The browser can't. */
  | 'none'
  /** It would not: as a rule a battery that is low, or a saver that is on. */
  | 'refused';

/**
 * Keeps the screen on while it is wanted and the page is in sight, through the Screen Wake Lock
 * API. Fires `state` when it has changed.
 */
export class Awake extends EventTarget {
  private wanted = false;
  private lock: WakeLockSentinel | null = null;
  private asking = false;
  private current: AwakeState = 'off';

  get state(): AwakeState {
    return this.current;
  }

  set(wanted: boolean): void {
    if (wanted === this.wanted) return;
    this.wanted = wanted;
    if (wanted) {
      document.addEventListener('visibilitychange', this.onVisibility);
      void this.ask();
      return;
    }
    document.removeEventListener('visibilitychange', this.onVisibility);
    void this.lock?.release();
    this.lock = null;
    this.become('off');
  }

  private async ask(): Promise<void> {
    if (!this.wanted || this.asking || this.lock !== null) return;
    if (document.visibilityState !== 'visible') return;
    // In lib.dom it is always there; older browsers and insecure pages have none.
    const { wakeLock } = navigator as { wakeLock?: WakeLock };
    if (wakeLock === undefined) return this.become('none');
    this.asking = true;
    try {
      const lock = await wakeLock.request('screen');
      lock.addEventListener('release', () => {
        if (this.lock === lock) this.lock = null;
        if (this.wanted) this.become(document.visibilityState === 'visible' ? 'refused' : 'off');
      });
      if (this.wanted) {
        this.lock = lock;
        this.become('on');
      } else void lock.release();
    } catch {
      if (this.wanted) this.become('refused');
    } finally {
      this.asking = false;
    }
  }

  /** The browser lets go of it whenever the page is out of sight. */
  private readonly onVisibility = (): void => void this.ask();

  /** Asks once more: as after a tap, when what stood against it may be gone. */
  retry(): void {
    if (this.current === 'refused') void this.ask();
  }

  private become(state: AwakeState): void {
    if (state === this.current) return;
    this.current = state;
    this.dispatchEvent(new Event('state'));
  }
}

export function awakeInWords(state: AwakeState): string {
  switch (state) {
    case 'off':
      return '';
    case 'on':
      return 'The screen stays on while this page is in sight.';
    case 'none':
      return 'This browser cannot keep the screen on. Set the device to turn it off later, if it gets dark too soon.';
    case 'refused':
      return 'The browser would not keep the screen on: as a rule the battery is low, or saving power is switched on.';
  }
}
