import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Whether all stands in one column, as the style sheets have it. Draws its element anew when that changes. */
export class NarrowPage implements ReactiveController {
  private readonly width = matchMedia('(max-width: 56rem)');

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  get matches(): boolean {
    return this.width.matches;
  }

  hostConnected(): void {
    this.width.addEventListener('change', this.onWidth);
  }

  hostDisconnected(): void {
    this.width.removeEventListener('change', this.onWidth);
  }

  private readonly onWidth = (): void => this.host.requestUpdate();
}
