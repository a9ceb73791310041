import {
  type Chart,
  KNOT_KINDS,
  KNOT_MARKS,
  type KnotKind,
  printable,
  type StartSide,
} from '@halfhitch/core';
import { html, nothing, svg, type TemplateResult } from 'lit';
import { type ChartLayout, type ChartPart, ROOM } from './chart-layout.js';
import { type Box, hatched, type Marking, short } from './hatches.js';

/** What a page of the chart shows. */
export interface ChartSheet {
  readonly chart: Chart;
  readonly start: StartSide;
  readonly layout: ChartLayout;
  readonly markings: readonly Marking[];
  /** Kinds of the edge knots of all rows: left and right of each, as places in KNOT_KINDS. */
  readonly edges: Uint8Array;
  readonly inColour: boolean;
  readonly title: string;
}

/** One page of the chart, with the legend and what the marks mean. */
export function chartPage(sheet: ChartSheet, part: ChartPart): TemplateResult {
  const { chart, title } = sheet;
  const { firstRow, endRow, firstColumn, endColumn } = part;
  const whole = firstColumn === 0 && endColumn === chart.columns;
  const place = `rows ${firstRow + 1} to ${endRow}${whole ? '' : `, columns ${firstColumn + 1} to ${endColumn}`}`;
  return html`<section class="sheet-chart" aria-label="Chart, ${place}">
    <h3><span class="sheet-name">${title}</span><span>Chart, ${place}</span></h3>
    ${legendLine(sheet)}
    <p class="sheet-marks">
      Knotted from the top down, each row the way it says. The mark at each end of a row is its edge
      knot there: ${edgeMarks(sheet)}.
    </p>
    ${cells(sheet, part)}
  </section>`;
}

function edgeMarks({ edges }: ChartSheet): TemplateResult[] {
  const found = KNOT_KINDS.filter((_, kind) => edges.includes(kind));
  return found.map(
    (kind: KnotKind, i) =>
      html`${i === 0 ? nothing : ', '}<span class="sheet-mark"><strong>${KNOT_MARKS[kind]}</strong> ${kind}</span>`,
  );
}

function legendLine(sheet: ChartSheet): TemplateResult {
  const { chart, markings } = sheet;
  return html`<ul class="sheet-legend">
    ${markings.map((marking) => {
      const colour = chart.colours[marking.colour];
      return html`<li>
        ${sample(sheet, marking)}
        <span>${printable(colour?.key ?? '')}</span>
        <span class="sheet-legend-name">${printable(colour?.name ?? '') || colour?.hex}</span>
      </li>`;
    })}
  </ul>`;
}

/** Two cells as they look in the chart. */
export function sample(
  { chart, inColour }: Pick<ChartSheet, 'chart' | 'inColour'>,
  marking: Marking,
): TemplateResult {
  const key = printable(chart.colours[marking.colour]?.key ?? '');
  const cell = { y: 0.2, width: 4.3, height: 4 };
  return html`<svg class="sheet-sample" viewBox="0 0 9 4.4" width="9mm" height="4.4mm" aria-hidden="true">
    <path d="M.2 .2h8.6v4h-8.6z" fill=${inColour ? marking.tint : '#ffffff'} />
    ${hatched(marking.hatch, [
      { x: 0.2, ...cell },
      { x: 4.5, ...cell },
    ])}
    <path d="M.2 .2h8.6v4h-8.6z" fill="none" stroke="#1a1a1a" stroke-width=".2" />
    ${marking.solid || marking.hatch === 0 ? nothing : svg`<path class="plate" d="M3.1 .7h2.8v3h-2.8z" />`}
    <text class=${marking.solid ? 'on-solid' : 'on-hatch'} x="4.5" y="3.2" font-size="2.9">${key}</text>
  </svg>`;
}

function cells(sheet: ChartSheet, part: ChartPart): TemplateResult {
  const { chart, layout, markings, inColour } = sheet;
  const { firstRow, endRow, firstColumn, endColumn } = part;
  const { cell } = layout;
  const left = ROOM.words + ROOM.mark;
  const across = endColumn - firstColumn;
  const down = endRow - firstRow;
  const width = left + across * cell.width + ROOM.mark + ROOM.number;
  const height = ROOM.top + down * cell.height + 0.4;
  const runs = runsOf(chart, part);
  const boxesOf = ({ row, from, end }: Run): Box[] =>
    Array.from({ length: end - from }, (_, i) => ({
      x: left + (from + i - firstColumn) * cell.width,
      y: ROOM.top + (row - firstRow) * cell.height,
      ...cell,
    }));
  const tintOf = ({ row, from, end }: Run): string =>
    `M${short(left + (from - firstColumn) * cell.width)} ${short(ROOM.top + (row - firstRow) * cell.height)}h${short((end - from) * cell.width)}v${short(cell.height)}h${short((from - end) * cell.width)}z`;
  return html`<svg
    class="sheet-cells"
    viewBox="0 0 ${short(width)} ${short(height)}"
    width="${short(width)}mm"
    height="${short(height)}mm"
    role="img"
    aria-label="Cells of the chart; the written rows say the same in words"
  >
    ${markings.map(({ colour, hatch, tint }) => {
      const own = runs.filter((run) => run.colour === colour);
      if (own.length === 0) return nothing;
      return svg`${inColour ? svg`<path d=${own.map(tintOf).join('')} fill=${tint} />` : nothing}
        ${hatched(hatch, own.flatMap(boxesOf))}`;
    })}
    <path class="grid" d=${gridOf(part, cell, left)} />
    <path class="grid fives" d=${gridOf(part, cell, left, 5)} />
    ${layout.keyed ? keys(sheet, part, left) : nothing}
    ${columnNumbers(part, cell.width, left)}
    ${Array.from({ length: down }, (_, i) => rowWords(sheet, part, firstRow + i, left))}
  </svg>`;
}

interface Run {
  readonly row: number;
  readonly from: number;
  readonly end: number;
  readonly colour: number;
}

/** Like cells side by side. */
function runsOf({ cells: all, columns }: Chart, part: ChartPart): Run[] {
  const runs: Run[] = [];
  for (let row = part.firstRow; row < part.endRow; row++) {
    let from = part.firstColumn;
    while (from < part.endColumn) {
      const colour = all[row * columns + from] as number;
      let end = from + 1;
      while (end < part.endColumn && all[row * columns + end] === colour) end++;
      runs.push({ row, from, end, colour });
      from = end;
    }
  }
  return runs;
}

/** Lines between cells; `every` fifth of them, counted from the chart's own first, to count by. */
function gridOf(
  { firstRow, endRow, firstColumn, endColumn }: ChartPart,
  cell: ChartLayout['cell'],
  left: number,
  every = 1,
): string {
  const right = left + (endColumn - firstColumn) * cell.width;
  const bottom = ROOM.top + (endRow - firstRow) * cell.height;
  const lines: string[] = [];
  for (let row = firstRow; row <= endRow; row++) {
    if (row % every !== 0 && row !== firstRow && row !== endRow) continue;
    lines.push(
      `M${short(left)} ${short(ROOM.top + (row - firstRow) * cell.height)}H${short(right)}`,
    );
  }
  for (let column = firstColumn; column <= endColumn; column++) {
    if (column % every !== 0 && column !== firstColumn && column !== endColumn) continue;
    lines.push(
      `M${short(left + (column - firstColumn) * cell.width)} ${ROOM.top}V${short(bottom)}`,
    );
  }
  return lines.join('');
}

/** The keys of the colours, each on a white ground so that the hatch does not run through it. */
function keys(
  { chart, layout, markings }: ChartSheet,
  { firstRow, endRow, firstColumn, endColumn }: ChartPart,
  left: number,
): TemplateResult[] {
  const { width, height } = layout.cell;
  const size = 0.62 * height;
  const marking = new Map(markings.map((one) => [one.colour, one]));
  const plates: string[] = [];
  const rows: TemplateResult[] = [];
  for (let row = firstRow; row < endRow; row++) {
    const middle = ROOM.top + (row - firstRow + 0.5) * height;
    const written = { solid: new Letters(), open: new Letters() };
    for (let column = firstColumn; column < endColumn; column++) {
      const place = chart.cells[row * chart.columns + column] as number;
      const x = left + (column - firstColumn + 0.5) * width;
      const { solid = false, hatch = 0 } = marking.get(place) ?? {};
      const key = printable(chart.colours[place]?.key ?? '');
      (solid ? written.solid : written.open).add(key, short(x));
      if (solid || hatch === 0) continue;
      plates.push(
        `M${short(x - 0.4 * size)} ${short(middle - 0.5 * size)}h${short(0.8 * size)}v${short(size)}h${short(-0.8 * size)}z`,
      );
    }
    const y = short(middle + 0.35 * size);
    for (const [name, { text, places }] of Object.entries(written)) {
      if (text === '') continue;
      rows.push(
        svg`<text class=${name === 'solid' ? 'on-solid' : 'on-hatch'} x=${places.join(' ')} y=${y} font-size=${short(size)}>${text}</text>`,
      );
    }
  }
  return [svg`<path class="plate" d=${plates.join('')} />`, ...rows];
}

/** Letters of one text element, each with a place of its own. */
class Letters {
  text = '';
  readonly places: number[] = [];

  add(letter: string, x: number): void {
    this.text += letter;
    // A place belongs to a UTF-16 unit (SVG 2, 11.2.2); a pair of surrogates takes the first.
    for (let i = 0; i < letter.length; i++) this.places.push(x);
  }
}

function columnNumbers(
  { firstColumn, endColumn }: ChartPart,
  width: number,
  left: number,
): TemplateResult[] {
  const numbers: TemplateResult[] = [];
  for (let column = firstColumn; column < endColumn; column++) {
    const last = column === endColumn - 1;
    if ((column + 1) % 5 !== 0 && column !== firstColumn && !last) continue;
    // The last number would run into a fifth one just before it.
    if (last && column !== firstColumn && (column + 1) % 5 === 1) continue;
    numbers.push(
      svg`<text class="middle" x=${short(left + (column - firstColumn + 0.5) * width)} y="3.8" font-size="2.5">${column + 1}</text>`,
    );
  }
  return numbers;
}

/** Number and way of a row, and the marks of its edge knots where the edges are on this page. */
function rowWords(
  { chart, start, layout, edges }: ChartSheet,
  { firstRow, firstColumn, endColumn }: ChartPart,
  row: number,
  left: number,
): TemplateResult {
  const { cell } = layout;
  const size = Math.min(2.7, cell.height * 0.95);
  const y = short(ROOM.top + (row - firstRow + 0.5) * cell.height + 0.36 * size);
  const right = left + (endColumn - firstColumn) * cell.width;
  const toRight = (row % 2 === 0) === (start === 'left');
  const mark = (side: 0 | 1): string => {
    const kind = KNOT_KINDS[edges[2 * row + side] as number];
    return kind === undefined ? '' : KNOT_MARKS[kind];
  };
  return svg`
    <text class="end" x=${ROOM.words - 1} y=${y} font-size=${size}>${row + 1}, to the ${toRight ? 'right' : 'left'}</text>
    ${firstColumn === 0 ? svg`<text class="middle mark" x=${left - ROOM.mark / 2} y=${y} font-size=${size * 1.1}>${mark(0)}</text>` : nothing}
    ${
      endColumn === chart.columns
        ? svg`<text class="middle mark" x=${short(right + ROOM.mark / 2)} y=${y} font-size=${size * 1.1}>${mark(1)}</text>`
        : nothing
    }
    <text x=${short(right + ROOM.mark + 0.5)} y=${y} font-size=${size}>${row + 1}</text>
  `;
}
