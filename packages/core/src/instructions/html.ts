import type { Chart } from '../chart/chart.js';
import { InputError } from '../errors.js';
import { drawChart } from '../picture/draw-chart.js';
import { drawFabric, MAX_KNOTS_DRAWN } from '../picture/draw-fabric.js';
import { escapeMarkup, safeColour } from '../picture/markup.js';
import type { Plan } from '../plan/plan.js';
import { printable } from '../printable.js';
import type { Verification } from '../verify/verification.js';
import { closingSection, openingSections, type Section } from './opening.js';
import type { InstructionPart, RowInstructions } from './parts.js';
import { changesInWords, findingInWords, findingsCounted } from './summary.js';
import { rowsOf, titleOf } from './text.js';
import { colourInWords, count } from './wording.js';

// The page holds all that it needs and no script, and says so: whatever a file's names contain,
// nothing in it can run or be fetched.
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** Above this the finished work is not drawn as thread: it would weigh more than the words. */
const MOST_KNOTS_SHOWN = 10_000;

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

/**
 * The instructions of a whole piece as one page of HTML that needs nothing else, in pieces, a row
 * at a time. It is made to be printed and to be read aloud.
 *
 * @throws InputError above 300,000 knots
 */
export function* instructionsHtml(
  plan: Plan,
  chart: Chart,
  verification: Verification,
): Generator<string, void, undefined> {
  if (plan.rows * plan.columns > MAX_KNOTS_DRAWN) {
    throw new InputError(
      'page-too-large',
      `A page of instructions for ${plan.rows * plan.columns} knots would be too large to open; the most is ${MAX_KNOTS_DRAWN}.`,
      {},
      'Take the instructions as text instead.',
    );
  }
  const title = escapeMarkup(titleOf(plan, chart));
  yield `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${escapeMarkup(POLICY)}">
<title>${title}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${title}</h1>
<p>${count(plan.rows, 'row')} of ${count(plan.columns, 'knot')}, ${plan.edge} edges.</p>
`;
  yield verdict(verification);
  yield `<h2>Chart</h2>\n<p>Rows are numbered from the top. Beside each row stands the way it is knotted.</p>\n${legend(chart)}<div class="wide" role="region" aria-label="Chart" tabindex="0">\n`;
  for (const piece of drawChart(chart, plan)) yield `${piece}\n`;
  yield '</div>\n';
  if (plan.rows * plan.columns <= MOST_KNOTS_SHOWN) {
    yield `<h2>The finished work</h2>\n${drawFabric({ plan, verification })}`;
  }
  for (const part of openingSections(plan)) yield section(part);
  yield '<h2>Row by row</h2>\n';
  for (const row of rowsOf(plan)) {
    if (row instanceof InputError) {
      yield `<p class="not-ok">The instructions stop here. ${escapeMarkup(row.message)}</p>\n`;
      break;
    }
    yield rowHtml(row);
  }
  yield section(closingSection(plan));
  yield findingsHtml(verification);
  yield '</main>\n</body>\n</html>\n';
}

function verdict(verification: Verification): string {
  const { ok, knots, halfHitches, changes, findings } = verification;
  const counts = `${count(knots, 'knot')}, ${count(halfHitches, 'half hitch', 'half hitches')}. ${changesInWords(changes)}`;
  const said = ok ? 'It knots out as drawn.' : 'It does not knot out as drawn.';
  const found = findingsCounted(findings);
  const more =
    found === ''
      ? ''
      : ` ${escapeMarkup(found)} The <a href="#findings">findings</a> are listed at the end.`;
  return `<p class="${ok ? 'ok' : 'not-ok'}"><strong>${said}</strong> ${escapeMarkup(counts)}${more}</p>\n`;
}

function findingsHtml({ findings }: Verification): string {
  if (findings.length === 0) return '';
  const items = findings.map((finding) => `<li>${escapeMarkup(findingInWords(finding))}</li>\n`);
  return `<section id="findings">\n<h2>Findings</h2>\n<ul>\n${items.join('')}</ul>\n</section>\n`;
}

function legend(chart: Chart): string {
  const drawn = new Set(chart.cells);
  const lines = chart.colours
    .map((colour, index) => {
      if (!drawn.has(index)) return '';
      const name = colourInWords({ id: '', role: 'lead', colour: colour.hex, name: colour.name });
      const hex = safeColour(colour.hex);
      return `<tr><td>${escapeMarkup(printable(colour.key))}</td><td><svg class="swatch" viewBox="0 0 40 16" aria-hidden="true"><path d="M.5 .5h39v15h-39Z" fill="${hex}" stroke="#000" stroke-opacity=".5"/></svg></td><td>${escapeMarkup(name)}</td><td>${hex}</td></tr>\n`;
    })
    .join('');
  return `<table>\n<thead><tr><th scope="col">Key</th><th scope="col">Colour</th><th scope="col">Name</th><th scope="col">Number</th></tr></thead>\n<tbody>\n${lines}</tbody>\n</table>\n`;
}

function section({ title, paragraphs, points }: Section): string {
  const texts = paragraphs.map((text) => `<p>${escapeMarkup(text)}</p>\n`).join('');
  const list =
    points.length === 0
      ? ''
      : `<ul>\n${points.map((text) => `<li>${escapeMarkup(text)}</li>\n`).join('')}</ul>\n`;
  return `<section>\n<h2>${escapeMarkup(title)}</h2>\n${texts}${list}</section>\n`;
}

function rowHtml(row: RowInstructions): string {
  const told = row.parts.filter((part) => part.kind === 'direction').map((part) => part.text);
  const todo = row.parts.filter((part) => part.kind !== 'direction');
  return [
    `<section id="row-${row.row + 1}">\n<h3>${escapeMarkup(row.heading)}</h3>\n`,
    `<p>${escapeMarkup(told.join(' '))}</p>\n`,
    todo.length === 0 ? '' : `<ol>\n${todo.map(partHtml).join('')}</ol>\n`,
    '</section>\n',
  ].join('');
}

function partHtml({ text, substeps }: InstructionPart): string {
  const steps =
    substeps.length === 0
      ? ''
      : `\n<ol>\n${substeps.map((substep) => `<li>${escapeMarkup(substep)}</li>\n`).join('')}</ol>\n`;
  return `<li>${escapeMarkup(text)}${steps}</li>\n`;
}
