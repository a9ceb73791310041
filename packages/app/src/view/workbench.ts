import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { ownFile } from '../keep/kinds-of-file.js';
import { LINK_MARK } from '../keep/link-mark.js';
import { setExample } from '../project/examples.js';
import { titleOf } from '../project/project.js';
import { Session } from '../project/session.js';
import { type Keeper, keepSession } from '../store/keep-session.js';
import { theStore } from '../store/open-store.js';
import { reasonOf } from '../work/reason.js';
import { burgee } from './burgee.js';
import { cautions } from './cautions.js';
import { FileDrop } from './file-drop.js';
import { SessionWatch } from './session-watch.js';
import { FIRST_VIEW, type Shown, VIEWS, type View, viewIn } from './views.js';

const demos = import.meta.glob<string>('../../../../examples/otter.json', {
  query: '?raw',
  import: 'default',
});

/** Larger files are refused before they are read at all. */
const MOST_BYTES = 32 * 1024 * 1024;

/**
 * The page: the open project, and the views of it. Names, legends and messages come from files, so
 * they are only ever set as text: no markup is made from them here, and the page's policy lets none
 * become script.
 */
export class Workbench extends LitElement {
  static override properties = {
    problem: { state: true },
    news: { state: true },
    view: { state: true },
    ready: { state: true },
    keeping: { state: true },
  };

  declare private problem: string;
  declare private news: string;
  declare private view: View;
  /** What shows the view, once its script has come. */
  declare private ready: Shown | null;
  /** What the maker must know of how work is kept; empty when all is well. */
  declare private keeping: string;

  readonly session = new Session();
  private keeper: Keeper | null = null;
  private linkProblem = '';
  /** How many files were chosen; none of them may give way to what the page opens by itself. */
  private chosen = 0;
  /** Until it is known what to open first. */
  private starting = true;
  private readonly drop = new FileDrop(this, (file) => void this.openFile(file));

  constructor() {
    super();
    this.problem = '';
    this.news = '';
    this.view = viewIn(location.hash) ?? (viewIn(FIRST_VIEW) as View);
    this.ready = null;
    this.keeping = '';
    new SessionWatch(this, ['project', 'piece', 'busy']);
  }

  /** In the page itself, so that its style sheet, find and print reach everything. */
  protected override createRenderRoot(): HTMLElement {
    // What stood in its place until now.
    this.replaceChildren();
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const { session } = this;
    session.addEventListener('problem', this.onProblem);
    session.addEventListener('piece', this.onPiece);
    session.addEventListener('project', this.onProject);
    session.addEventListener('open', this.onOpen);
    addEventListener('hashchange', this.onAddress);
    addEventListener('keydown', this.onKey);
    void this.loadView();
    void this.start().finally(() => {
      this.starting = false;
      this.requestUpdate();
    });
    if (import.meta.env.PROD) whenQuiet(() => void import('../keep/updates.js'));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    const { session } = this;
    session.removeEventListener('problem', this.onProblem);
    session.removeEventListener('piece', this.onPiece);
    session.removeEventListener('project', this.onProject);
    session.removeEventListener('open', this.onOpen);
    removeEventListener('hashchange', this.onAddress);
    removeEventListener('keydown', this.onKey);
  }

  // ---- charts ----

  /** Opens what was worked on last, or the demo; a pattern that the address holds comes first. */
  private async start(): Promise<void> {
    const { session } = this;
    if (this.keeper === null) {
      this.keeper = await keepSession(session, theStore());
      this.keeper.addEventListener('state', this.onKeeping);
      this.onKeeping();
    }
    if (session.project !== null || session.busy) return;
    if (isPattern(location.hash)) {
      if (await this.openLink()) return;
      this.linkProblem = this.problem;
    }
    if (session.project === null && (await this.keeper.openLast(() => this.chosen === 0))) {
      return;
    }
    if (session.project === null && !session.busy && this.chosen === 0) await this.openDemo();
  }

  /** Opens the pattern that the address carries. What can't be opened is told, and nothing is lost. */
  private async openLink(): Promise<boolean> {
    const { hash } = location;
    // Taken out of the address, so that loading the page anew goes on with what is made of it.
    history.replaceState(history.state, '', `#${this.view.name}`);
    try {
      const { readLink } = await import('../keep/pattern-link.js');
      const link = readLink(hash);
      const notices = link.notices.map(({ message }) => message);
      if (link.kind === 'alpha') this.session.openChart(link.chart, notices);
      else this.session.openDiagonal(link.pattern, null, notices);
      return true;
    } catch (error) {
      this.problem = reasonOf(error);
      return false;
    }
  }

  private readonly onKeeping = (): void => {
    this.keeping = this.keeper?.message ?? '';
  };

  private async openDemo(): Promise<void> {
    const [load] = Object.values(demos);
    if (load === undefined) return;
    const { chosen } = this;
    const text = await load();
    // A file that was chosen meanwhile is what the maker wants to see.
    if (chosen !== this.chosen) return;
    const opened = await this.session.openBytes(new TextEncoder().encode(text), 'otter.json');
    if (opened) this.onlyShown();
  }

  private async openDiagonalDemo(): Promise<void> {
    const { chosen, session } = this;
    const { demoPattern } = await import('../diagonal/demo.js');
    if (chosen !== this.chosen) return;
    session.openDiagonal(demoPattern());
    this.onlyShown();
  }

  /** The open project came with the page. */
  private onlyShown(): void {
    const { project } = this.session;
    if (project === null) return;
    setExample(project);
    this.keeper?.setSample(project);
  }

  private async openFile(file: File): Promise<void> {
    this.chosen++;
    this.problem = '';
    if (file.size > MOST_BYTES) {
      this.problem = `${file.name}: The file is larger than 32 MiB, so it cannot be a chart. Choose a PNG with one pixel for each knot, a text chart or a chart document.`;
      return;
    }
    let bytes: Uint8Array;
    try {
      bytes = new Uint8Array(await file.arrayBuffer());
    } catch {
      this.problem = `${file.name}: The file could not be read. Check that it is still there, and choose it again.`;
      return;
    }
    const kind = ownFile(bytes);
    if (kind === null) {
      await this.session.openBytes(bytes, file.name);
      return;
    }
    const { openOwnFile } = await import('../keep/open-file.js');
    await openOwnFile(this.session, kind, bytes, file.name);
  }

  private readonly onProblem = (event: Event): void => {
    this.problem = (event as CustomEvent<string>).detail;
  };

  /** Another kind of project has other elements for the same view. */
  private readonly onOpen = (): void => {
    if (this.ready !== this.shown) void this.loadView();
  };

  private readonly onProject = (): void => {
    // What opens in place of a link that can't be opened must not hide why.
    this.problem = this.linkProblem;
    this.linkProblem = '';
  };

  private readonly onPiece = (): void => {
    const { project, piece, diagonalPiece } = this.session;
    const proven = project?.kind === 'diagonal' ? diagonalPiece : piece;
    if (project === null || proven === null) return;
    const verdict = proven.ok ? 'knots out as drawn' : 'does not knot out as drawn';
    this.news = `${titleOf(project)}: ${verdict}.`;
  };

  // ---- views ----

  private readonly onAddress = (): void => {
    if (isPattern(location.hash)) {
      void this.openLink();
      return;
    }
    const view = viewIn(location.hash);
    if (view === null || view === this.view) return;
    this.view = view;
    void this.loadView().then(() => {
      // As a new page would: read from its top.
      this.querySelector<HTMLElement>('main')?.focus();
      scrollTo(0, 0);
    });
  };

  /** What shows the view of the open project. */
  private get shown(): Shown {
    return this.view.of[this.session.project?.kind ?? 'alpha'];
  }

  private async loadView(): Promise<void> {
    const { shown, view } = this;
    try {
      await shown.load();
    } catch {
      this.problem = `The view “${view.label}” could not be loaded. Check the connection, and load the page anew.`;
      return;
    }
    if (shown === this.shown) this.ready = shown;
    await this.updateComplete;
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isWritten(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) this.session.redo();
    else this.session.undo();
  };

  // ---- the page ----

  protected override render(): TemplateResult {
    const { session } = this;
    const { project, busy } = session;
    return html`
      ${this.letterhead()}
      <halfhitch-updates .session=${session}></halfhitch-updates>
      <p class="unseen" role="status">${busy ? 'Working the chart out.' : this.news}</p>
      ${
        this.problem === ''
          ? nothing
          : html`<div class="problem" role="alert">
            <p>${this.problem}</p>
            ${project === null ? nothing : html`<p>${this.keptInWords()}</p>`}
            <button type="button" @click=${() => {
              this.problem = '';
            }}>Close this message</button>
          </div>`
      }
      ${this.keeping === '' ? nothing : html`<p class="note" role="status">${this.keeping}</p>`}
      <main tabindex="-1" aria-busy=${busy ? 'true' : 'false'}>
        ${project === null || this.ready !== this.shown ? this.nothingYet() : this.shown.show(session)}
      </main>
      ${cautions(
        () => void this.openDemo(),
        () => void this.openDiagonalDemo(),
      )}
      ${this.drop.over ? html`<div class="drop" aria-hidden="true">Let go to open it</div>` : nothing}
    `;
  }

  private letterhead(): TemplateResult {
    const { session } = this;
    return html`
      <header class="letterhead">
        <div class="name">${burgee()}<h1>Halfhitch</h1></div>
        <nav class="views" aria-label="Views">
          ${VIEWS.map(
            (view) => html`<a
              href=${`#${view.name}`}
              title=${view.about}
              aria-current=${view === this.view ? 'page' : 'false'}
            >${view.label}</a>`,
          )}
        </nav>
        <div class="open">
          ${this.crossing('Undo', session.undoing, () => session.undo())}
          ${this.crossing('Do again', session.redoing, () => session.redo())}
          <label class="button primary">
            Open a chart
            <input
              class="unseen"
              type="file"
              accept=".png,.txt,.json,.svg,.html,image/png,text/plain,application/json,image/svg+xml,text/html"
              @change=${this.onFile}
            />
          </label>
        </div>
      </header>
    `;
  }

  private crossing(name: string, what: string | null, go: () => void): TemplateResult {
    return html`<button
      type="button"
      title=${what === null ? nothing : `${name}: ${what}`}
      aria-disabled=${what === null ? 'true' : 'false'}
      @click=${go}
    >${name}</button>`;
  }

  private nothingYet(): TemplateResult {
    const waiting = this.starting || this.session.busy || this.session.project !== null;
    return html`<section class="card welcome">
      <h2>${waiting ? 'Working the chart out' : 'No chart is open'}</h2>
      <p>
        Open a chart or drop one here: a PNG with one pixel for each knot, a text chart, or a chart
        document. It stays on this device.
      </p>
    </section>`;
  }

  private keptInWords(): string {
    const { project } = this.session;
    return project === null ? '' : `${titleOf(project)} is still open, as it was.`;
  }

  private readonly onFile = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    // Emptied, so that the same file can be chosen again once it is mended.
    input.value = '';
    if (file !== undefined) void this.openFile(file);
  };
}

function isPattern(hash: string): boolean {
  return hash.startsWith(`#${LINK_MARK}`);
}

/** Runs a task once all that is seen first is there. */
function whenQuiet(task: () => void): void {
  const later = (): void => {
    setTimeout(task, 1_000);
  };
  if (document.readyState === 'complete') later();
  else addEventListener('load', later, { once: true });
}

/** Where keys write text and undo what was written. */
function isWritten(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLTextAreaElement || target.isContentEditable) return true;
  return (
    target instanceof HTMLInputElement &&
    !['checkbox', 'radio', 'range', 'button', 'color', 'file'].includes(target.type)
  );
}

customElements.define('halfhitch-workbench', Workbench);
