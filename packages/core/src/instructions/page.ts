import type { ChartColour } from '../chart/chart.js';
import { InputError } from '../errors.js';
import { escapeMarkup, safeColour } from '../picture/markup.js';
import { MAX_KNOTS_DRAWN } from '../picture/size.js';
import { printable } from '../printable.js';
import type { Section } from './opening.js';
import { colourInWords } from './wording.js';

/** What every page of instructions is made of, whatever is knotted. */

/** Above this the finished work is not drawn as thread: it would weigh more than the words. */
export const MOST_KNOTS_SHOWN = 10_000;

/** @throws InputError above 300,000 knots */
export function checkPageSize(knots: number): void {
  if (knots <= MAX_KNOTS_DRAWN) return;
  throw new InputError(
    'page-too-large',
    `A page of instructions for ${knots} knots would be too large to open; the most is ${MAX_KNOTS_DRAWN}.`,
    {},
    'Take the instructions as text instead.',
  );
}

// The page holds all that it needs and no script, and says so: whatever a file's names contain,
// nothing in it can run or be fetched.
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const STYLE = `
:root { color-scheme: light; }
body { font: 1rem/1.5 system-ui, sans-serif; color: #1d2429; background: #fff; margin: 0 auto; padding: 1.5rem; max-width: 52rem; }
h1 { font-size: 1.6rem; line-height: 1.2; } h2 { font-size: 1.25rem; margin-top: 2rem; } h3 { font-size: 1.05rem; margin: 1.5rem 0 .25rem; }
p, li { max-width: 44rem; } ol ol { list-style: lower-alpha; } li { margin: .2rem 0; }
a { color: #0b57a4; } table { border-collapse: collapse; } th, td { text-align: left; padding: .25rem .9rem .25rem 0; border-bottom: 1px solid #ccd3d8; }
.swatch { width: 2.5rem; height: 1rem; vertical-align: middle; }
.ok { border-left: .3rem solid #2c7a4b; padding-left: .8rem; } .not-ok { border-left: .3rem solid #b3261e; padding-left: .8rem; }
.wide { overflow-x: auto; margin-top: 1rem; } svg { max-width: 100%; height: auto; } .wide svg { max-width: none; } .chart { display: block; margin-bottom: 1rem; }
.chart text { font: 9px system-ui, sans-serif; fill: #1d2429; } .chart .row { text-anchor: end; }
.chart .column, .chart .on-dark, .chart .on-light { text-anchor: middle; } .chart .on-dark { fill: #fff; } .chart .on-light { fill: #000; }
.chart .grid { fill: none; stroke: #000; stroke-opacity: .25; stroke-width: .5; }
@media print { body { padding: 0; max-width: none; font-size: 10.5pt; } h2, h3 { break-after: avoid; } li, tr, .chart { break-inside: avoid; } .wide { overflow: visible; } .chart { max-width: 100%; height: auto; } * { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
`;

/** Opens the page: `main` is open after it, with the title as its heading. */
export function pageHead(title: string): string {
  const shown = escapeMarkup(title);
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${escapeMarkup(POLICY)}">
<title>${shown}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${shown}</h1>
`;
}

const PAGE_END = '</main>\n</body>\n</html>\n';

export function sectionHtml({ title, paragraphs, points }: Section): string {
  const texts = paragraphs.map((text) => `<p>${escapeMarkup(text)}</p>\n`).join('');
  const list =
    points.length === 0
      ? ''
      : `<ul>\n${points.map((text) => `<li>${escapeMarkup(text)}</li>\n`).join('')}</ul>\n`;
  return `<section>\n<h2>${escapeMarkup(title)}</h2>\n${texts}${list}</section>\n`;
}

/** The rows one by one, what is left to do when all are tied, and the findings: the page ends there. */
export function* rowsAndEndHtml<Row>(
  rows: Iterable<Row | InputError>,
  rowHtml: (row: Row) => string,
  closing: Section,
  findings: readonly string[],
): Generator<string, void, undefined> {
  yield '<h2>Row by row</h2>\n';
  let stopped = false;
  for (const row of rows) {
    stopped = row instanceof InputError;
    yield row instanceof InputError
      ? `<p class="not-ok">The instructions stop here. ${escapeMarkup(row.message)}</p>\n`
      : rowHtml(row);
  }
  if (!stopped) yield sectionHtml(closing);
  yield findingsHtml(findings);
  yield PAGE_END;
}

/** One row: what to know first, then what to do in turn. */
export function rowSectionHtml(
  row: { readonly row: number; readonly heading: string },
  told: readonly string[],
  todo: readonly Item[],
): string {
  return [
    `<section id="row-${row.row + 1}">\n<h3>${escapeMarkup(row.heading)}</h3>\n`,
    `<p>${escapeMarkup(told.join(' '))}</p>\n`,
    todo.length === 0 ? '' : `<ol>\n${todo.map(itemHtml).join('')}</ol>\n`,
    '</section>\n',
  ].join('');
}

/** One thing to do, and what to do in turn where it takes several steps. */
interface Item {
  readonly text: string;
  readonly substeps: readonly string[];
}

function itemHtml({ text, substeps }: Item): string {
  const steps =
    substeps.length === 0
      ? ''
      : `\n<ol>\n${substeps.map((substep) => `<li>${escapeMarkup(substep)}</li>\n`).join('')}</ol>\n`;
  return `<li>${escapeMarkup(text)}${steps}</li>\n`;
}

/** @param found the findings counted, in a sentence; empty when there are none */
export function verdictHtml(ok: boolean, counts: string, found: string): string {
  const said = ok ? 'It knots out as drawn.' : 'It does not knot out as drawn.';
  const more =
    found === ''
      ? ''
      : ` ${escapeMarkup(found)} The <a href="#findings">findings</a> are listed at the end.`;
  return `<p class="${ok ? 'ok' : 'not-ok'}"><strong>${said}</strong> ${escapeMarkup(counts)}${more}</p>\n`;
}

/** @param findings a sentence each; nothing is shown when there are none */
function findingsHtml(findings: readonly string[]): string {
  if (findings.length === 0) return '';
  const items = findings.map((finding) => `<li>${escapeMarkup(finding)}</li>\n`);
  return `<section id="findings">\n<h2>Findings</h2>\n<ul>\n${items.join('')}</ul>\n</section>\n`;
}

/** @param shown indices of the colours to list */
export function legendHtml(colours: readonly ChartColour[], shown: ReadonlySet<number>): string {
  const lines = colours
    .map((colour, index) => {
      if (!shown.has(index)) return '';
      const name = colourInWords({ id: '', role: 'lead', colour: colour.hex, name: colour.name });
      const hex = safeColour(colour.hex);
      return `<tr><td>${escapeMarkup(printable(colour.key))}</td><td><svg class="swatch" viewBox="0 0 40 16" aria-hidden="true"><path d="M.5 .5h39v15h-39Z" fill="${hex}" stroke="#000" stroke-opacity=".5"/></svg></td><td>${escapeMarkup(name)}</td><td>${hex}</td></tr>\n`;
    })
    .join('');
  return `<table>\n<thead><tr><th scope="col">Key</th><th scope="col">Colour</th><th scope="col">Name</th><th scope="col">Number</th></tr></thead>\n<tbody>\n${lines}</tbody>\n</table>\n`;
}
