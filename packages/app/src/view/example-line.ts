import { html, nothing, type TemplateResult } from 'lit';
import { askForOwn } from '../draw/own-request.js';
import { isExample } from '../project/examples.js';
import type { Session } from '../project/session.js';
import { PageElement } from './page-element.js';
import { SessionWatch } from './session-watch.js';

/** Says of a project that came with the page what it is, and where one can go on from it. */
export class ExampleLine extends PageElement {
  static override properties = { session: { attribute: false } };

  declare session: Session | null;

  constructor() {
    super();
    this.session = null;
    new SessionWatch(this, ['project', 'piece', 'busy']);
  }

  private get shown(): boolean {
    const project = this.session?.project ?? null;
    return project !== null && isExample(project);
  }

  protected override willUpdate(): void {
    this.hidden = !this.shown;
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.shown) return nothing;
    return html`
      <p>This is an example, to look round with. Change it as you like, or begin here:</p>
      <a class="button" href="#draw" @click=${onOwn}>Draw your own</a>
      <a class="button" href="#learn">Learn the four knots</a>
      <a class="button" href="#tie">Tie it</a>
    `;
  }
}

function onOwn({ ctrlKey, metaKey, shiftKey }: MouseEvent): void {
  // Opened beside this page, it is another page that it is for.
  if (!ctrlKey && !metaKey && !shiftKey) askForOwn();
}

customElements.define('halfhitch-example', ExampleLine);
