import { CHART_LIMITS } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import type { ProjectSummary } from '../store/listing.js';
import './picture-of.js';
import { listedName, sizeInWords, whenInWords } from './summary-words.js';

export interface ItemActions {
  open(one: ProjectSummary): void;
  copy(one: ProjectSummary): void;
  takeAway(one: ProjectSummary): void;
  startRenaming(one: ProjectSummary): void;
  rename(one: ProjectSummary, name: string): void;
  stopRenaming(): void;
}

/** A project in the list, and what can be done with it. */
export function libraryItem(
  one: ProjectSummary,
  { isOpen, renaming }: { readonly isOpen: boolean; readonly renaming: boolean },
  act: ItemActions,
): TemplateResult {
  const name = listedName(one);
  const named = html`<span class="unseen"> ${name}</span>`;
  return html`<article class="library-item ${isOpen ? 'current' : ''}" aria-label=${name}>
    <halfhitch-blob-picture .blob=${one.thumbnail?.image ?? null}></halfhitch-blob-picture>
    <div class="library-about">
      ${renaming ? nameForm(one, act) : html`<h3>${name}</h3>`}
      <p>${isOpen ? html`<strong>Open now.</strong>` : nothing} ${sizeInWords(one)}</p>
      <p class="hint">Changed ${html`<time datetime=${new Date(one.changed).toISOString()}>${whenInWords(one.changed)}</time>`}</p>
    </div>
    <div class="library-actions">
      <button type="button" class=${isOpen ? '' : 'primary'} aria-disabled=${isOpen ? 'true' : 'false'} @click=${() => act.open(one)}>
        Open${named}
      </button>
      <button type="button" @click=${() => act.copy(one)}>Copy${named}</button>
      <button type="button" @click=${() => act.startRenaming(one)}>Rename${named}</button>
      <button type="button" @click=${() => act.takeAway(one)}>Remove${named}</button>
    </div>
  </article>`;
}

function nameForm(one: ProjectSummary, act: ItemActions): TemplateResult {
  return html`<form
    class="library-name"
    @submit=${(event: Event) => {
      event.preventDefault();
      const field = (event.target as HTMLFormElement).querySelector('input');
      act.rename(one, field?.value ?? one.name);
    }}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key === 'Escape') act.stopRenaming();
    }}
  >
    <label>
      New name
      <input type="text" autocomplete="off" maxlength=${CHART_LIMITS.maxName} .value=${one.name} />
    </label>
    <button type="submit" class="primary">Keep the name</button>
    <button type="button" @click=${() => act.stopRenaming()}>Leave it</button>
  </form>`;
}
