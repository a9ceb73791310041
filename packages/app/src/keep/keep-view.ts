import { html, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import '../diagonal/print/sheets-panel.js';
import '../print/sheets-panel.js';
import type { Session } from '../project/session.js';
import { SessionWatch } from '../view/session-watch.js';
import './library.js';
import './share-panel.js';

/** The projects of this device, and the open one as files, link and printed sheets. */
export class KeepView extends PageElement {
  static override properties = { session: { attribute: false } };

  declare session: Session | null;

  constructor() {
    super();
    this.session = null;
    new SessionWatch(this, ['open']);
  }

  protected override render(): TemplateResult {
    const { session } = this;
    return html`
      <section class="card" aria-labelledby="library-name">
        <halfhitch-library .session=${session}></halfhitch-library>
      </section>
      <section class="card" aria-labelledby="share-name">
        <halfhitch-share .session=${session}></halfhitch-share>
      </section>
      <section class="card sheets-card" aria-labelledby="sheets-name">
        ${
          session?.project?.kind === 'diagonal'
            ? html`<halfhitch-diagonal-sheets .session=${session}></halfhitch-diagonal-sheets>`
            : html`<halfhitch-sheets .session=${session}></halfhitch-sheets>`
        }
      </section>
    `;
  }
}

customElements.define('halfhitch-keep', KeepView);
