import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Player } from '../playback/player.js';
import type { CameraTurn } from './camera-turn.js';

/** What is drawn frame by frame, and what moves it. */
export interface Drawn {
  readonly player: Player;
  readonly turn: CameraTurn;
  draw(): void;
  /** It has come into sight. */
  seen(): void;
}

/** Draws at the page's animation frames, only while it is in sight and only what has changed. */
export class Frames implements ReactiveController {
  private frame = 0;
  private lastTick = 0;
  private inSight = false;
  private stale = true;
  private watchers: { disconnect(): void }[] = [];
  private readonly host: ReactiveControllerHost & Element;
  private readonly drawn: Drawn;

  constructor(host: ReactiveControllerHost & Element, drawn: Drawn) {
    this.host = host;
    this.drawn = drawn;
    host.addController(this);
  }

  hostDisconnected(): void {
    for (const watcher of this.watchers) watcher.disconnect();
    this.watchers = [];
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.inSight = false;
  }

  /** Draws while the stage is in sight, and anew when its size changes. */
  watch(stage: Element | null): void {
    if (stage === null || !this.host.isConnected || this.watchers.length > 0) return;
    const size = new ResizeObserver(() => this.redraw());
    size.observe(stage);
    const sight = new IntersectionObserver((entries) => {
      const seen = entries[entries.length - 1]?.isIntersecting ?? false;
      if (seen === this.inSight) return;
      this.inSight = seen;
      this.lastTick = 0;
      if (!seen) return;
      this.drawn.seen();
      this.redraw();
    });
    sight.observe(stage);
    this.watchers = [size, sight];
  }

  /** Draws at the next frame, whatever may have changed. */
  redraw(): void {
    this.stale = true;
    this.wake();
  }

  /** Time passes from now on: what has passed before does not count. */
  start(): void {
    this.lastTick = 0;
  }

  private wake(): void {
    if (this.frame !== 0 || !this.host.isConnected) return;
    this.frame = requestAnimationFrame((now) => {
      this.frame = 0;
      this.tick(now);
    });
  }

  private tick(now: number): void {
    const passed = this.lastTick === 0 ? 0 : (now - this.lastTick) / 1000;
    this.lastTick = now;
    if (!this.inSight) {
      this.lastTick = 0;
      return;
    }
    const { player, turn } = this.drawn;
    player.tick(passed);
    if (turn.turning) {
      turn.pass(passed);
      this.stale = true;
    }
    if (this.stale) {
      this.stale = false;
      this.drawn.draw();
    }
    if (player.playing || turn.turning) this.wake();
    else this.lastTick = 0;
  }
}
