import { html, nothing, type TemplateResult } from 'lit';
import '../view/swatch.js';
import type { OwnThread } from './match-threads.js';

/** A thread, and whether it is to be used. */
export interface ThreadChoice extends OwnThread {
  readonly used: boolean;
}

const MOST_THREADS = 64;

/** Threads of the first list, ticked, and those of the second with other colours and names. */
export function threadChoices(
  first: readonly OwnThread[],
  second: readonly OwnThread[],
): ThreadChoice[] {
  const known = new Set(first.flatMap(({ hex, name }) => [hex, name]));
  const others = second.filter(({ hex, name }) => !known.has(hex) && !known.has(name));
  return [...first, ...others]
    .slice(0, MOST_THREADS)
    .map(({ hex, name }, i) => ({ hex, name, used: first.length === 0 || i < first.length }));
}

/** The maker's threads, to be ticked, and a way to add another. */
export function threadsField(
  threads: readonly ThreadChoice[],
  change: (threads: ThreadChoice[]) => void,
): TemplateResult {
  const add = (event: Event): void => {
    const fields = (event.currentTarget as HTMLElement).closest('.thread-adder');
    const colour = fields?.querySelector<HTMLInputElement>('input[type=color]');
    const name = fields?.querySelector<HTMLInputElement>('input[type=text]');
    if (!colour || !name) return;
    const thread = { hex: colour.value.toLowerCase(), name: name.value.trim(), used: true };
    const others = threads.filter(({ hex }) => hex !== thread.hex);
    change([...others, thread].slice(-MOST_THREADS));
    name.value = '';
  };
  return html`
    <ul class="thread-list">
      ${threads.map(
        (thread, i) => html`<li>
          <label class="check">
            <input
              type="checkbox"
              .checked=${thread.used}
              @change=${(event: Event) => {
                const used = (event.target as HTMLInputElement).checked;
                change(threads.map((one, at) => (at === i ? { ...one, used } : one)));
              }}
            />
            <halfhitch-swatch .colour=${thread.hex}></halfhitch-swatch>
            <span>${thread.name || thread.hex}</span>
          </label>
        </li>`,
      )}
    </ul>
    <div class="thread-adder">
      <div class="field">
        <label for="picture-thread-colour">Another thread</label>
        <input id="picture-thread-colour" type="color" value="#6aa5c9" />
      </div>
      <div class="field">
        <label for="picture-thread-name">Its name</label>
        <input id="picture-thread-name" type="text" maxlength="60" autocomplete="off" />
      </div>
      <button type="button" @click=${add}>Add</button>
    </div>
    ${threads.length >= MOST_THREADS ? html`<p class="hint">At most ${MOST_THREADS} threads.</p>` : nothing}
  `;
}
