import { html, type TemplateResult } from 'lit';
import { STORE_LIMITS } from '../store/limits.js';
import type { DamagedProject, ProjectSummary } from '../store/listing.js';
import { figures } from '../view/figures.js';
import { listedName, sizeInWords } from './summary-words.js';

export interface LeftoverActions {
  restore(one: ProjectSummary): void;
  saveRaw(one: DamagedProject): void;
  erase(id: string): void;
}

/**
 * Projects that were removed, and can be brought back.
 *
 * @param erasing id of the one that is erased if it is asked for once more
 */
export function removedList(
  removed: readonly ProjectSummary[],
  erasing: string | null,
  act: LeftoverActions,
): TemplateResult {
  return html`<details class="fold">
    <summary>Removed: ${figures(removed.length)}</summary>
    <p class="hint">They are erased for good ${STORE_LIMITS.removedDays} days after they were removed.</p>
    <ul class="library-plain">
      ${removed.map(
        (one) => html`<li>
          <span>${listedName(one)}, ${sizeInWords(one)}</span>
          <button type="button" @click=${() => act.restore(one)}>Bring back<span class="unseen"> ${listedName(one)}</span></button>
          ${eraser(one.id, listedName(one), erasing, act)}
        </li>`,
      )}
    </ul>
  </details>`;
}

/** Projects that can't be read, of which what is left can be saved as a file. */
export function damagedList(
  damaged: readonly DamagedProject[],
  erasing: string | null,
  act: LeftoverActions,
): TemplateResult {
  return html`<section class="library-damaged" aria-label="Damaged projects">
    <h3>${damaged.length === 1 ? 'One project is damaged' : `${figures(damaged.length)} projects are damaged`}</h3>
    <p>
      What this browser kept of ${damaged.length === 1 ? 'it' : 'them'} can't be read; all others
      are untouched. Save what is left as a file, since someone may be able to mend it, and erase
      it here. If you have exported the project before, open that file.
    </p>
    <ul class="library-plain">
      ${damaged.map(
        (one) => html`<li>
          <span><strong>${one.name === '' ? 'Without a name' : one.name}.</strong> ${one.what}</span>
          <button type="button" @click=${() => act.saveRaw(one)}>Save what is left</button>
          ${eraser(one.id, one.name, erasing, act)}
        </li>`,
      )}
    </ul>
  </section>`;
}

function eraser(
  id: string,
  name: string,
  erasing: string | null,
  act: LeftoverActions,
): TemplateResult {
  return html`<button type="button" @click=${() => act.erase(id)}>
    ${erasing === id ? 'Erase it for good?' : 'Erase'}<span class="unseen"> ${name}</span>
  </button>`;
}
