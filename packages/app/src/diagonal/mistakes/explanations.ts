import { html, nothing, type TemplateResult } from 'lit';
import type { Place } from '../../draw/edit/place.js';
import type { Told, ToldExplanation } from './messages.js';

type Show = (place: Place) => void;

/**
 * What explains that a piece looks as it was marked, the likeliest first.
 *
 * @param stale whether something was marked since
 */
export function explanations(told: Told, stale: boolean, show: Show): TemplateResult {
  return html`<section class="told" aria-labelledby="told-name">
    <h3 id="told-name">${toldInShort(told)}</h3>
    ${stale ? html`<p class="note">Found before the last thing was marked. Ask again to take it in.</p>` : nothing}
    ${
      told.what === 'problem'
        ? nothing
        : html`
          ${
            told.complete
              ? nothing
              : html`<p class="note">The search was ended before everything was tried, so others are possible.</p>`
          }
          <ol class="explanations">
            ${told.explanations.map((one, place) => explanation(one, place, show))}
          </ol>
        `
    }
  </section>`;
}

function explanation(one: ToldExplanation, place: number, show: Show): TemplateResult {
  const several = one.alternatives.length + one.more > 1;
  return html`<li class="explanation">
    <h4>Explanation ${place + 1}<span class="share">, ${share(one.likelihood)} of those listed</span></h4>
    <ul class="alternatives">
      ${one.alternatives.map(
        ({ what, place: at }, which) => html`<li>
          <p>${several ? html`<strong>${which === 0 ? 'Either: ' : 'Or: '}</strong>` : nothing}${what}</p>
          ${
            at === null
              ? nothing
              : html`<button type="button" class="small" @click=${() => show(at)}>
                Show where<span class="unseen">: ${what}</span>
              </button>`
          }
        </li>`,
      )}
      ${
        one.more === 0
          ? nothing
          : html`<li>Or in ${one.more === 1 ? 'one other way' : `one of ${one.more} other ways`} that would look the same.</li>`
      }
    </ul>
    ${one.question === '' ? nothing : html`<p>${one.question}</p>`}
    ${
      one.unexplained === 0
        ? nothing
        : html`<p class="note">It leaves ${one.unexplained === 1 ? 'one thing' : `${one.unexplained} things`} unexplained.</p>`
    }
    <p>${one.effect}</p>
    <details class="fold">
      <summary>${several ? 'If it is the first: ways to go on' : 'Ways to go on'}</summary>
      <ul class="ways">
        ${one.ways.map((sentences) => html`<li>${sentences.map((sentence) => html`<p>${sentence}</p>`)}</li>`)}
      </ul>
    </details>
  </li>`;
}

/** The gist of it. */
export function toldInShort(told: Told): string {
  if (told.what === 'problem') return told.message;
  const { differing, explanations } = told;
  if (differing === 0) return 'Nothing that you marked differs from the pattern.';
  const things = differing === 1 ? 'One thing differs' : `${differing} things differ`;
  if (explanations.length === 0) {
    return `${things} from the pattern, and no mistake was found that explains it. Look again at the first row that differs, and at the row above it.`;
  }
  return explanations.length === 1
    ? `${things} from the pattern. One explanation was found.`
    : `${things} from the pattern. ${explanations.length} explanations were found, the likeliest first.`;
}

function share(likelihood: number): string {
  return likelihood > 0.995 ? 'all' : `${Math.max(1, Math.round(100 * likelihood))} %`;
}
