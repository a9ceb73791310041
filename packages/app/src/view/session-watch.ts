import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session, SessionNews } from '../project/session.js';

interface Watching extends ReactiveControllerHost {
  readonly session: Session | null;
  readonly isConnected: boolean;
}

/** Draws an element anew whenever its session tells one of some news, while it is in the page. */
export class SessionWatch implements ReactiveController {
  private watched: Session | null = null;

  constructor(
    private readonly host: Watching,
    private readonly news: readonly SessionNews[],
  ) {
    host.addController(this);
  }

  hostUpdate(): void {
    // An update that was asked for before the host left the page comes after it has.
    this.watch(this.host.isConnected ? this.host.session : null);
  }

  hostConnected(): void {
    this.watch(this.host.session);
  }

  hostDisconnected(): void {
    this.watch(null);
  }

  private watch(session: Session | null): void {
    if (session === this.watched) return;
    for (const news of this.news) this.watched?.removeEventListener(news, this.draw);
    this.watched = session;
    for (const news of this.news) session?.addEventListener(news, this.draw);
  }

  private readonly draw = (): void => {
    this.host.requestUpdate();
  };
}
