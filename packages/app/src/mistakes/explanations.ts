import { html, nothing, type TemplateResult } from 'lit';
import type { MistakenView, Told, ToldExplanation } from './messages.js';

/** One alternative of one part of one explanation, from 0. */
export interface Choice {
  readonly explanation: number;
  readonly part: number;
  readonly alternative: number;
}

type Show = (choice: Choice) => void;

/** What explains what was seen, likeliest first; the one chosen is shown in its place. */
export function explanations(
  { explanations: found }: Told,
  choice: Choice | null,
  view: MistakenView | null,
  mirror: boolean,
  show: Show,
): TemplateResult | typeof nothing {
  if (found.length === 0) return nothing;
  return html`<ol class="explanations">
    ${found.map((one, place) => explanation(one, place, choice, view, mirror, show))}
  </ol>`;
}

function explanation(
  one: ToldExplanation,
  place: number,
  choice: Choice | null,
  view: MistakenView | null,
  mirror: boolean,
  show: Show,
): TemplateResult {
  const chosen = choice?.explanation === place;
  const { unexplained } = one;
  const unsure = one.parts.some(({ alternatives }) => alternatives.length > 1);
  return html`<li class="explanation ${chosen ? 'chosen' : ''}">
    <h4>
      Explanation ${place + 1}<span class="share">, ${share(one.likelihood)} of those listed</span>
    </h4>
    ${one.parts.map((part, at) => {
      const several = part.alternatives.length + part.more > 1;
      return html`<ul class="alternatives">
        ${part.alternatives.map((alternative, which) => {
          const pressed = chosen && choice.part === at && choice.alternative === which;
          return html`<li>
            <p>
              ${several ? html`<strong>${which === 0 ? 'Either: ' : 'Or: '}</strong>` : at > 0 ? html`<strong>And: </strong>` : nothing}${alternative.words}
            </p>
            <button
              type="button"
              class="small"
              aria-pressed=${pressed ? 'true' : 'false'}
              @click=${() => show({ explanation: place, part: at, alternative: which })}
            >Show it<span class="unseen">: ${alternative.words}</span></button>
          </li>`;
        })}
        ${
          part.more === 0
            ? nothing
            : html`<li>Or in ${part.more === 1 ? 'one other way' : `one of ${part.more} other ways`} that would look the same.</li>`
        }
      </ul>`;
    })}
    ${
      unexplained === 0
        ? nothing
        : html`<p class="note">It leaves ${unexplained === 1 ? 'one thing' : `${unexplained} things`} unexplained.</p>`
    }
    ${
      one.undo.length === 0
        ? nothing
        : html`<details class="fold">
          <summary>${unsure ? 'To be safe, whichever it was: ' : ''}${one.undo[0]}</summary>
          <ol>
            ${one.undo.slice(1).map((sentence) => html`<li>${sentence}</li>`)}
            <li>${one.goOn}</li>
          </ol>
        </details>`
    }
    ${
      chosen && view !== null
        ? html`<halfhitch-compare watching ?mirror=${mirror} .view=${view}></halfhitch-compare>`
        : nothing
    }
  </li>`;
}

function share(likelihood: number): string {
  return likelihood > 0.995 ? 'all' : `${Math.max(1, Math.round(100 * likelihood))} %`;
}
