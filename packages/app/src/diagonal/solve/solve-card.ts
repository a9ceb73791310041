import { html, nothing, type TemplateResult } from 'lit';
import type { DiagonalProject } from '../../project/project.js';
import { counted, figures } from '../../view/figures.js';
import { differing, shownBy } from '../edit/pattern.js';
import { foundInWords, type Offer } from './offer.js';
import type { Search } from './search.js';
import { type WishSettings, wishForm } from './wish-form.js';

export interface SolveActions {
  find(): void;
  stop(): void;
  set(change: Partial<WishSettings>): void;
  look(at: Offer['showing']): void;
  take(): void;
  leave(): void;
}

const STAGES: Readonly<Record<string, string>> = {
  reading: 'Reading the picture',
  searching: 'Searching for strings and knots',
  explaining: 'Looking for the smallest part that stands in the way',
  nearing: 'Looking for the nearest pattern',
  tidying: 'Making the pattern easier to tie',
};

/** Finding strings and knots for what is drawn. */
export function solveCard(
  project: DiagonalProject,
  settings: WishSettings,
  search: Search | null,
  offer: Offer | null,
  said: string,
  act: SolveActions,
): TemplateResult {
  return html`
    <h2 id="solve-name">A way to knot it</h2>
    ${offer === null ? state(project) : nothing}
    ${said === '' ? nothing : html`<p class="solve-said" role="status">${said}</p>`}
    ${offer === null ? nothing : offered(offer, act)}
    ${search === null ? finding(project, settings, offer, act) : searching(search, act)}
  `;
}

function state(project: DiagonalProject): TemplateResult {
  const { pattern, wanted } = project;
  if (wanted === null) {
    return html`<p class="solve-state good">What is drawn is just what the knots show.</p>`;
  }
  const many = differing(shownBy(pattern), wanted).length;
  return html`<p class="solve-state">
    ${
      many === 0
        ? 'The knots show all that is wanted.'
        : `Not knotted yet: ${figures(many)} ${many === 1 ? 'knot shows' : 'knots show'} something else than is drawn.`
    }
  </p>`;
}

function finding(
  { pattern }: DiagonalProject,
  settings: WishSettings,
  offer: Offer | null,
  act: SolveActions,
): TemplateResult {
  return html`
    ${wishForm(settings, pattern.colours, (change) => act.set(change))}
    <div class="draw-row">
      <button type="button" class=${offer === null ? 'primary' : ''} @click=${() => act.find()}>
        ${offer === null ? 'Find a way to knot it' : 'Search again'}
      </button>
    </div>
  `;
}

function searching(search: Search, act: SolveActions): TemplateResult {
  const { progress, isStopping } = search;
  const stage = STAGES[progress?.stage ?? 'reading'] ?? 'Searching';
  const share = progress?.share ?? null;
  return html`
    <div class="solve-going">
      <label class="stage">
        <span role="status">${isStopping ? 'Ending the search' : stage} …</span>
        ${
          share === null
            ? html`<progress></progress>`
            : html`<progress .value=${share} max="1"></progress>`
        }
      </label>
      <p class="hint">
        ${
          progress?.wrong == null
            ? nothing
            : html`Best so far: ${counted(progress.wrong, 'knot')} different.`
        }
      </p>
      <button type="button" aria-disabled=${String(isStopping)} @click=${() => act.stop()}>
        Stop the search
      </button>
    </div>
  `;
}

function offered(offer: Offer, act: SolveActions): TemplateResult {
  const { solution, showing } = offer;
  const both = solution.conflict !== null && solution.pattern !== null;
  const look = (at: Offer['showing'], label: string) => html`<label>
    <input
      type="radio"
      name="solve-look"
      .checked=${showing === at}
      @change=${() => act.look(at)}
    />
    <span>${label}</span>
  </label>`;
  return html`<div class="solve-offer">
    <p role="status">${foundInWords(offer)}</p>
    ${
      both
        ? html`<fieldset class="switch">
          <legend class="unseen">What is shown</legend>
          ${look('nearest', 'Nearest pattern')} ${look('conflict', 'What stands in the way')}
        </fieldset>`
        : nothing
    }
    ${
      showing === 'nearest'
        ? html`<p class="hint">
          Knots that differ have a dashed frame, with the colour that was wanted in their middle.
        </p>`
        : solution.conflict === null
          ? nothing
          : html`<p class="hint">
            The marked knots can’t all be as they are drawn: change one of them, or leave it in any
            colour.
          </p>`
    }
    <div class="draw-row">
      ${
        solution.pattern === null
          ? nothing
          : html`<button type="button" class="primary" @click=${() => act.take()}>
            Take the nearest pattern
          </button>`
      }
      <button type="button" @click=${() => act.leave()}>Back to my drawing</button>
    </div>
  </div>`;
}
