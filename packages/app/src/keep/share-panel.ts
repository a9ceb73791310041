import { InputError, printable, printChartDocument } from '@halfhitch/core';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { type Project, titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { theStore } from '../store/open-store.js';
import { SessionWatch } from '../view/session-watch.js';
import { WorkError } from '../work/work-error.js';
import { chartAsKnotted } from './as-knotted.js';
import { keepDesk } from './desk.js';
import { download } from './download.js';
import { fileNameOf } from './file-name.js';
import { LINK_LIMITS, linkFragment } from './pattern-link.js';
import type { CarriedProgress } from './project-document.js';
import { tutorialOf } from './tutorial-page.js';

interface Export {
  readonly name: string;
  readonly about: string;
  readonly ending: string;
  readonly type: string;
  readonly make: (project: Project) => Promise<string | Uint8Array<ArrayBuffer>>;
}

const EXPORTS: readonly Export[] = [
  {
    name: 'Project',
    about:
      'All of it: chart, how it is knotted, cut list and how far you are. To go on elsewhere, and as a copy to keep safe.',
    ending: '.halfhitch.json',
    type: 'application/json',
    make: async (project) =>
      keepDesk.ask({ ask: 'project', project, progress: await progressOf(project) }),
  },
  {
    name: 'Chart document',
    about: 'The chart alone, with its edges and start, as text that programs read.',
    ending: '.json',
    type: 'application/json',
    make: async (project) => printChartDocument(chartAsKnotted(project)),
  },
  {
    name: 'PNG chart',
    about:
      'One pixel a knot, to be drawn on in any drawing program. Names of colours are not kept.',
    ending: '.png',
    type: 'image/png',
    make: (project) => keepDesk.ask({ ask: 'png', chart: chartAsKnotted(project) }),
  },
  {
    name: 'SVG picture',
    about: 'The knotted piece, drawn as thread; up to 100,000 knots. Can be opened here again.',
    ending: '.svg',
    type: 'image/svg+xml',
    make: (project) =>
      keepDesk.ask({ ask: 'svg', chart: chartAsKnotted(project), choice: project.choice }),
  },
  {
    name: 'Web page',
    about:
      'One file that shows every knot being tied, without a connection; up to 100,000 knots. Can be opened here again.',
    ending: '.html',
    type: 'text/html',
    make: (project) => tutorialOf(chartAsKnotted(project)),
  },
  {
    name: '3D model',
    about:
      'The finished piece as binary glTF, in metres; up to 20,000 knots, with less detail the more there are. 20 to 110 MB from a thousand knots on.',
    ending: '.glb',
    type: 'model/gltf-binary',
    make: (project) =>
      keepDesk.ask({ ask: 'model', chart: chartAsKnotted(project), choice: project.choice }),
  },
];

/** The open project as files of many kinds, and as a link. */
export class SharePanel extends LitElement {
  static override properties = {
    session: { attribute: false },
    busy: { state: true },
    said: { state: true },
    problem: { state: true },
    link: { state: true },
  };

  declare session: Session | null;
  /** Name of the export that is being made. */
  declare private busy: string;
  declare private said: string;
  declare private problem: string;
  declare private link: { readonly of: Project; readonly address: string } | null;

  constructor() {
    super();
    this.session = null;
    this.busy = '';
    this.said = '';
    this.problem = '';
    this.link = null;
    new SessionWatch(this, ['project']);
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  private async save(one: Export): Promise<void> {
    const project = this.session?.project;
    if (project == null || this.busy !== '') return;
    this.busy = one.name;
    this.said = `Making the ${one.name}.`;
    this.problem = '';
    try {
      const data = await one.make(project);
      const file = fileNameOf(project.chart.name, one.ending);
      download(data, one.type, file);
      this.said = `${file} was handed to the browser to be saved.`;
    } catch (error) {
      this.said = '';
      this.problem = inWords(error);
    }
    this.busy = '';
  }

  private makeLink(): void {
    const project = this.session?.project;
    if (project == null) return;
    this.problem = '';
    try {
      const address = new URL(`#${linkFragment(chartAsKnotted(project))}`, location.href).href;
      this.link = { of: project, address };
      this.said = 'The link is made.';
      void this.updateComplete.then(() => this.querySelector<HTMLInputElement>('#link')?.select());
    } catch (error) {
      this.link = null;
      this.problem = inWords(error);
    }
  }

  private async copyLink(address: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(address);
      this.said = 'The link is copied.';
    } catch {
      this.querySelector<HTMLInputElement>('#link')?.select();
      this.said = 'The browser lets no page copy here. The link is marked: copy it by hand.';
    }
  }

  private async passOn(address: string, title: string): Promise<void> {
    try {
      await navigator.share({ title, url: address });
    } catch {
      // Thought better of.
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const project = this.session?.project;
    if (project == null) return nothing;
    return html`
      <div class="bar"><h2 id="share-name">Export ${titleOf(project)}</h2></div>
      ${this.problem === '' ? nothing : html`<p class="field-error" role="alert">${this.problem}</p>`}
      <p class="share-said" role="status">${this.said}</p>
      <ul class="exports">
        ${EXPORTS.map(
          (one) => html`<li>
            <button
              type="button"
              aria-disabled=${this.busy === '' ? 'false' : 'true'}
              aria-describedby="export-${one.ending.replaceAll('.', '')}"
              @click=${() => void this.save(one)}
            >${this.busy === one.name ? 'Making it' : one.name}</button>
            <p id="export-${one.ending.replaceAll('.', '')}">${one.about}</p>
          </li>`,
        )}
        <li>
          <button type="button" @click=${() => this.makeLink()}>Link</button>
          <p>
            The chart inside an address, up to ${LINK_LIMITS.characters.toLocaleString('en-GB')}
            characters long. Whoever opens it sees the pattern; no server does.
          </p>
        </li>
      </ul>
      ${this.linkShown(project)}
    `;
  }

  private linkShown(project: Project): TemplateResult | typeof nothing {
    const { link } = this;
    if (link === null || link.of.id !== project.id) return nothing;
    const stale = link.of.chart !== project.chart || link.of.choice !== project.choice;
    const { address } = link;
    return html`<div class="link">
      <label for="link">Link to this pattern, ${address.length.toLocaleString('en-GB')} characters</label>
      <input id="link" type="text" readonly .value=${address} @focus=${(event: Event) => (event.target as HTMLInputElement).select()} />
      <div class="link-actions">
        <button type="button" class="primary" @click=${() => void this.copyLink(address)}>Copy the link</button>
        ${
          'share' in navigator
            ? html`<button type="button" @click=${() => void this.passOn(address, printable(project.chart.name) || 'Halfhitch')}>Pass it on</button>`
            : nothing
        }
      </div>
      ${stale ? html`<p class="note">It is of the pattern before the last change. Make it anew.</p>` : nothing}
    </div>`;
  }
}

async function progressOf({ id }: Project): Promise<CarriedProgress | null> {
  try {
    const progress = await (await theStore()).progress(id);
    if (progress === null) return null;
    const { done, columns, active, marks } = progress;
    return { done, columns, seconds: active, marks };
  } catch {
    // The piece is worth more than its count.
    return null;
  }
}

function inWords(error: unknown): string {
  if (error instanceof WorkError || error instanceof InputError) return error.message;
  return `This could not be made (${error instanceof Error ? error.message : String(error)}).`;
}

customElements.define('halfhitch-share', SharePanel);
