import { InputError, printable, printChartDocument, printDiagonalDocument } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import { asKnotted } from '../diagonal/keep/as-knotted.js';
import { DIAGONAL_EXPORTS } from '../diagonal/keep/exports.js';
import { knottedAlike, nameOf, type Project, titleOf } from '../project/project.js';
import type { Session } from '../project/session.js';
import { figures } from '../view/figures.js';
import { PageElement } from '../view/page-element.js';
import { SessionWatch } from '../view/session-watch.js';
import { reasonOf } from '../work/reason.js';
import { WorkError } from '../work/work-error.js';
import { chartAsKnotted } from './as-knotted.js';
import { download } from './download.js';
import { EXPORTS, type Export } from './exports.js';
import { fileNameOf } from './file-name.js';
import { LINK_LIMITS, linkFragment } from './pattern-link.js';

/** The open project as files of many kinds, and as a link. */
export class SharePanel extends PageElement {
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

  private async save<P extends Project>(one: Export<P>, project: P): Promise<void> {
    if (this.busy !== '') return;
    this.busy = one.name;
    this.said = `Making the ${one.name}.`;
    this.problem = '';
    try {
      const data = await one.make(project);
      const file = fileNameOf(nameOf(project), one.ending);
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
      const address = new URL(`#${linkFragment(documentOf(project))}`, location.href).href;
      this.link = { of: project, address };
      this.said =
        project.kind === 'diagonal' && project.wanted !== null
          ? 'The link is made. It carries the knots, not the picture that is still wanted of them.'
          : 'The link is made.';
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
        ${
          project.kind === 'alpha'
            ? EXPORTS.map((one) => this.row(one, project))
            : DIAGONAL_EXPORTS.map((one) => this.row(one, project))
        }
        <li>
          <button type="button" @click=${() => this.makeLink()}>Link</button>
          <p>
            The pattern inside an address, up to ${figures(LINK_LIMITS.characters)}
            characters long. Whoever opens it sees the pattern; no server does.
          </p>
        </li>
      </ul>
      ${this.linkShown(project)}
    `;
  }

  private row<P extends Project>(one: Export<P>, project: P): TemplateResult {
    const id = `export-${one.ending.replaceAll('.', '')}`;
    return html`<li>
      <button
        type="button"
        aria-disabled=${this.busy === '' ? 'false' : 'true'}
        aria-describedby=${id}
        @click=${() => void this.save(one, project)}
      >${this.busy === one.name ? 'Making it' : one.name}</button>
      <p id=${id}>${one.about}</p>
    </li>`;
  }

  private linkShown(project: Project): TemplateResult | typeof nothing {
    const { link } = this;
    if (link === null || link.of.id !== project.id) return nothing;
    const stale = !knottedAlike(link.of, project);
    const { address } = link;
    return html`<div class="link">
      <label for="link">Link to this pattern, ${figures(address.length)} characters</label>
      <input id="link" type="text" readonly .value=${address} @focus=${(event: Event) => (event.target as HTMLInputElement).select()} />
      <div class="link-actions">
        <button type="button" class="primary" @click=${() => void this.copyLink(address)}>Copy the link</button>
        ${
          'share' in navigator
            ? html`<button type="button" @click=${() => void this.passOn(address, printable(nameOf(project)) || 'Halfhitch')}>Pass it on</button>`
            : nothing
        }
      </div>
      ${stale ? html`<p class="note">It is of the pattern before the last change. Make it anew.</p>` : nothing}
    </div>`;
  }
}

/** The document of what a project knots. */
function documentOf(project: Project): string {
  return project.kind === 'alpha'
    ? printChartDocument(chartAsKnotted(project))
    : printDiagonalDocument(asKnotted(project).pattern);
}

function inWords(error: unknown): string {
  if (error instanceof WorkError || error instanceof InputError) return error.message;
  return `This could not be made (${reasonOf(error)}).`;
}

customElements.define('halfhitch-share', SharePanel);
