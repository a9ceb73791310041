import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';
import '../view/swatch.js';
import type { OwnThread } from './match-threads.js';
import type { PictureResult } from './messages.js';

/** A thread as far from its colour as this (CIEDE2000) is told apart at a glance. */
const FAR_OFF = 10;

/** What came of the picture: size, threads taken, and what the maker should know. */
export function pictureResults(
  { chart, matches, strays, seeThrough, warnings }: PictureResult,
  threads: readonly OwnThread[],
  distorted: number,
): TemplateResult {
  const notes = [
    strays === 0
      ? ''
      : `${strays === 1 ? 'One stray knot was' : `${figures(strays)} stray knots were`} given a colour of ${strays === 1 ? 'its' : 'their'} neighbours.`,
    seeThrough === 0
      ? ''
      : 'The picture can be seen through in places: these were laid on the colour chosen for behind it.',
    distorted === 0
      ? ''
      : `The picture comes out ${Math.abs(distorted)} % ${distorted > 0 ? 'higher' : 'lower'} than it is, by its width.`,
  ].filter((note) => note !== '');
  return html`
    <p class="size">
      ${figures(chart.rows)} rows of ${chart.columns} knots,
      ${chart.colours.length === 1 ? 'one colour' : `${chart.colours.length} colours`}
    </p>
    <ul class="legend">
      ${chart.colours.map(
        ({ hex, name }) => html`<li>
          <halfhitch-swatch .colour=${hex}></halfhitch-swatch>${name}
        </li>`,
      )}
    </ul>
    ${
      notes.length + warnings.length === 0
        ? nothing
        : html`<ul class="notices">
            ${notes.map((note) => html`<li>${note}</li>`)}
            ${warnings.map((warning) => html`<li>${warning}</li>`)}
          </ul>`
    }
    ${matches.length === 0 ? nothing : matchTable(matches, threads)}
  `;
}

function matchTable(
  matches: PictureResult['matches'],
  threads: readonly OwnThread[],
): TemplateResult {
  return html`<table class="match-table">
    <caption>
      Threads taken
      <span class="hint">
        Difference is CIEDE2000: 1 is just seen side by side, ${FAR_OFF} at a glance.
      </span>
    </caption>
    <thead>
      <tr>
        <th scope="col">In the picture</th>
        <th scope="col">Thread</th>
        <th scope="col" class="amount">Difference</th>
      </tr>
    </thead>
    <tbody>
      ${matches.map(({ hex, thread, difference }) => {
        const taken = threads[thread];
        return html`<tr>
          <td><halfhitch-swatch .colour=${hex}></halfhitch-swatch> ${hex}</td>
          <td>
            <halfhitch-swatch .colour=${taken?.hex ?? ''}></halfhitch-swatch>
            ${taken?.name || taken?.hex}
          </td>
          <td class="amount">${difference.toFixed(1)}${difference >= FAR_OFF ? ', far off' : ''}</td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}
