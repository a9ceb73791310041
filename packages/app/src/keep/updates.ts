import { html, nothing, type TemplateResult } from 'lit';
import type { Session } from '../project/session.js';
import { keeperOf } from '../store/keep-session.js';
import { PageElement } from '../view/page-element.js';
import { registerServiceWorker } from '../work/trusted-workers.js';

/** How often a page that stays open asks for a newer version, ms. */
const ASK_EVERY = 60 * 60 * 1000;

/**
 * Has the app's files put by for use without a connection, and offers a newer version once it is
 * there. Nothing is loaded anew before the maker says so, and not before all work is kept.
 */
export class Updates extends PageElement {
  static override properties = {
    session: { attribute: false },
    news: { state: true },
    problem: { state: true },
  };

  declare session: Session | null;
  declare private news: 'none' | 'ready' | 'elsewhere';
  declare private problem: string;

  private registration: ServiceWorkerRegistration | undefined;
  private accepted = false;
  private lastAsked = Date.now();
  /** The first to take over this page is no newer version. */
  private hadOne = false;

  constructor() {
    super();
    this.session = null;
    this.news = 'none';
    this.problem = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (!('serviceWorker' in navigator)) return;
    this.hadOne = navigator.serviceWorker.controller !== null;
    navigator.serviceWorker.addEventListener('controllerchange', this.onTakenOver);
    document.addEventListener('visibilitychange', this.onSeen);
    void this.start();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (!('serviceWorker' in navigator)) return;
    navigator.serviceWorker.removeEventListener('controllerchange', this.onTakenOver);
    document.removeEventListener('visibilitychange', this.onSeen);
  }

  private async start(): Promise<void> {
    const registration = await registerServiceWorker();
    this.registration = registration;
    if (registration === undefined) return;
    this.look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', () => this.look());
    });
  }

  private look(): void {
    if (this.registration?.waiting && navigator.serviceWorker.controller !== null) {
      this.news = 'ready';
    }
  }

  private readonly onTakenOver = (): void => {
    if (this.accepted) location.reload();
    else if (this.hadOne) this.news = 'elsewhere';
    this.hadOne = true;
  };

  private readonly onSeen = (): void => {
    if (document.visibilityState === 'hidden' || Date.now() - this.lastAsked < ASK_EVERY) return;
    this.lastAsked = Date.now();
    // Without a network there is nothing newer to be had.
    this.registration?.update().catch(() => {});
  };

  private async accept(): Promise<void> {
    try {
      const keeper = this.session === null ? null : await keeperOf(this.session);
      if (keeper?.waiting) await keeper.keepNow();
    } catch (error) {
      this.problem = `Nothing was loaded anew, since your work is not kept. ${error instanceof Error ? error.message : ''}`;
      return;
    }
    this.accepted = true;
    const waiting = this.registration?.waiting;
    if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
    else location.reload();
  }

  protected override render(): TemplateResult | typeof nothing {
    if (this.news === 'none') return nothing;
    return html`<div class="updates" role="status">
      <p>
        ${
          this.news === 'ready'
            ? 'A newer version is ready. What you are doing goes on until you load it; your work is kept.'
            : 'A newer version was loaded in another window. Load it here too before you go on.'
        }
      </p>
      <button type="button" class="primary" @click=${() => void this.accept()}>Load the newer version</button>
      ${
        this.news === 'ready'
          ? html`<button type="button" @click=${() => {
              this.news = 'none';
            }}>Later</button>`
          : nothing
      }
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
    </div>`;
  }
}

customElements.define('halfhitch-updates', Updates);
