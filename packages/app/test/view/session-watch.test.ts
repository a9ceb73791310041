import type { ReactiveController } from 'lit';
import { describe, expect, it } from 'vitest';
import type { Session } from '../../src/project/session.js';
import { SessionWatch } from '../../src/view/session-watch.js';

class Host {
  isConnected = false;
  asked = 0;
  readonly updateComplete = Promise.resolve(true);
  private readonly controllers: ReactiveController[] = [];

  constructor(readonly session: Session) {
    new SessionWatch(this, ['project']);
  }

  addController(controller: ReactiveController): void {
    this.controllers.push(controller);
  }

  removeController(): void {}

  requestUpdate(): void {
    this.asked++;
  }

  enter(): void {
    this.isConnected = true;
    for (const controller of this.controllers) controller.hostConnected?.();
  }

  leave(): void {
    this.isConnected = false;
    for (const controller of this.controllers) controller.hostDisconnected?.();
  }

  /** As Lit does it: what was asked for is done later, wherever the host is by then. */
  update(): void {
    for (const controller of this.controllers) controller.hostUpdate?.();
  }
}

/** All that a watch asks of a session; a whole one would start workers. */
const aSession = () => new EventTarget() as Session;

describe('watching a session', () => {
  const news = (session: Session) => session.dispatchEvent(new Event('project'));

  it('draws a host anew while it is in the page, however often it enters', () => {
    const host = new Host(aSession());
    host.enter();
    host.update();
    news(host.session);
    expect(host.asked).toBe(1);
    host.leave();
    host.enter();
    news(host.session);
    expect(host.asked).toBe(2);
  });

  it('ends when the host leaves, even if an update comes after that', () => {
    const host = new Host(aSession());
    host.enter();
    host.update();
    host.leave();
    host.update();
    news(host.session);
    expect(host.asked).toBe(0);
  });
});
