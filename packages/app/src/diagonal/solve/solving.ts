import type { DiagonalPattern } from '@halfhitch/core';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { DiagonalProject } from '../../project/project.js';
import { figures } from '../../view/figures.js';
import { drawnPicture } from '../edit/pattern.js';
import { type Offer, offerOf } from './offer.js';
import { Search } from './search.js';
import { type WishSettings, wishOf } from './wish-form.js';

/** Whoever shows what is found. */
export interface SolvingHost extends ReactiveControllerHost {
  readonly open: DiagonalProject | null;
  /** Puts a pattern that was found in the place of the open one. */
  take(pattern: DiagonalPattern, what: string): void;
  fail(message: string): void;
}

/** The search for a way to knot what is drawn, and what came of the last one. */
export class Solving implements ReactiveController {
  private running: Search | null = null;
  /** What was drawn when the search began. */
  private searchedFor: unknown = null;
  private offered: { readonly offer: Offer; readonly of: unknown } | null = null;
  private told: { readonly text: string; readonly of: DiagonalProject | null } | null = null;

  constructor(private readonly host: SolvingHost) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.set(null);
  }

  /** What was offered and told is of what was drawn then. */
  hostUpdate(): void {
    const { open } = this.host;
    if (this.offered !== null && (open === null || drawnOf(open) !== this.offered.of)) {
      this.offered = null;
    }
    if (this.told !== null && this.told.of !== open) this.told = null;
  }

  get search(): Search | null {
    return this.running;
  }

  /** To be looked at, taken or left. */
  get offer(): Offer | null {
    return this.offered?.offer ?? null;
  }

  /** What the last search came to, in a sentence. */
  get found(): string {
    return this.told?.text ?? '';
  }

  /** Another project is open. */
  reset(): void {
    this.set(null);
    this.offered = null;
    this.told = null;
  }

  find(open: DiagonalProject, wish: WishSettings): void {
    this.reset();
    this.searchedFor = drawnOf(open);
    this.set(new Search(drawnPicture(open), wishOf(wish, open.pattern)));
  }

  stop(): void {
    this.running?.stop();
  }

  look(showing: Offer['showing']): void {
    const { offered } = this;
    if (offered === null) return;
    this.offered = { ...offered, offer: { ...offered.offer, showing } };
    this.host.requestUpdate();
  }

  takeNearest(): void {
    const nearest = this.offer?.solution.pattern ?? null;
    if (nearest !== null) this.host.take(nearest, 'Take the nearest pattern');
  }

  leave(): void {
    this.offered = null;
    this.host.requestUpdate();
  }

  private set(search: Search | null): void {
    const { running } = this;
    running?.removeEventListener('progress', this.onProgress);
    running?.removeEventListener('end', this.onEnd);
    running?.abandon();
    this.running = search;
    search?.addEventListener('progress', this.onProgress);
    search?.addEventListener('end', this.onEnd);
    this.host.requestUpdate();
  }

  private readonly onProgress = (): void => this.host.requestUpdate();

  private readonly onEnd = (): void => {
    const { running, host } = this;
    const outcome = running?.outcome ?? null;
    const { open } = host;
    this.set(null);
    if (running === null || outcome === null || open === null) return;
    if (outcome.what === 'problem') host.fail(outcome.message);
    else if (drawnOf(open) !== this.searchedFor) {
      // Put over what was drawn since, it would be lost from sight.
      this.told = { text: 'The drawing was changed meanwhile. Search again for it.', of: open };
    } else if (outcome.what === 'given up')
      this.told = { text: 'The search was stopped.', of: open };
    else if (outcome.solution.status === 'solved' && outcome.solution.pattern !== null) {
      host.take(outcome.solution.pattern, 'Find a way to knot it');
      const seconds = figures(outcome.solution.seconds, 0, 1);
      const text = `Found in ${seconds} s: these strings and knots show just what was drawn.`;
      this.told = { text, of: host.open };
    } else {
      const offer = offerOf(running.wanted, outcome.solution);
      this.offered = { offer, of: drawnOf(open) };
    }
    host.requestUpdate();
  };
}

/** What is drawn of a project: its pattern where nothing else is wanted. */
function drawnOf({ pattern, wanted }: DiagonalProject): unknown {
  return wanted ?? pattern;
}
