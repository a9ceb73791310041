import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** What the reader asks of every page: less motion, and dark or light. */
export class Preferences implements ReactiveController {
  private readonly lessMotion = matchMedia('(prefers-reduced-motion: reduce)');
  private readonly dark = matchMedia('(prefers-color-scheme: dark)');
  private readonly changed: () => void;

  constructor(host: ReactiveControllerHost, changed: () => void) {
    this.changed = changed;
    host.addController(this);
  }

  /** Whether motion is not wanted. */
  get calm(): boolean {
    return this.lessMotion.matches;
  }

  hostConnected(): void {
    this.lessMotion.addEventListener('change', this.changed);
    this.dark.addEventListener('change', this.changed);
  }

  hostDisconnected(): void {
    this.lessMotion.removeEventListener('change', this.changed);
    this.dark.removeEventListener('change', this.changed);
  }
}
