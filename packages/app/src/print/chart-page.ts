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
import { hatchPatterns, type Marking, patternId } from './hatches.js';

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
export function chartPage(sheet: ChartSheet, part: ChartPart, index: number): TemplateResult {
  const { chart, title } = sheet;
  const { firstRow, endRow, firstColumn, endColumn } = part;
  const whole = firstColumn === 0 && endColumn === chart.columns;
  const place = `rows ${firstRow + 1} to ${endRow}${whole ? '' : `, columns ${firstColumn + 1} to ${endColumn}`}`;
  return html`<section class="sheet-chart" aria-label="Chart, ${place}">
    <h3><span class="sheet-name">${title}</span><span>Chart, ${place}</span></h3>
    ${legendLine(sheet, index)}
    <p class="sheet-marks">
      Knotted from the top down, each row the way it says. The mark at each end of a row is its edge
      knot there: ${edgeMarks(sheet)}.
    </p>
    ${cells(sheet, part, index)}
  </section>`;
}

function edgeMarks({ edges }: ChartSheet): TemplateResult[] {
  const found = KNOT_KINDS.filter((_, kind) => edges.includes(kind));
  return found.map(
    (kind: KnotKind, i) =>
      html`${i === 0 ? nothing : ', '}<span class="sheet-mark"><strong>${KNOT_MARKS[kind]}</strong> ${kind}</span>`,
  );
}

function legendLine(sheet: ChartSheet, index: number): TemplateResult {
  const { chart, markings } = sheet;
  const prefix = `sheet-${index}-legend-`;
  return html`<ul class="sheet-legend">
    ${markings.map((marking) => {
      const colour = chart.colours[marking.colour];
      return html`<li>
        ${sample(sheet, marking, prefix)}
        <span>${printable(colour?.key ?? '')}</span>
        <span class="sheet-legend-name">${printable(colour?.name ?? '') || colour?.hex}</span>
      </li>`;
    })}
  </ul>`;
}

/** A small cell as it looks in the chart. */
export function sample(
  { chart, inColour }: Pick<ChartSheet, 'chart' | 'inColour'>,
  marking: Marking,
  prefix: string,
): TemplateResult {
  const own = `${prefix}${marking.colour}-`;
  const key = printable(chart.colours[marking.colour]?.key ?? '');
  return html`<svg class="sheet-sample" viewBox="0 0 9 4.4" width="9mm" height="4.4mm" aria-hidden="true">
    <defs>${hatchPatterns(own, [marking])}</defs>
    <rect x=".1" y=".1" width="8.8" height="4.2" fill=${inColour ? marking.tint : '#ffffff'} />
    <rect x=".1" y=".1" width="8.8" height="4.2" fill="url(#${patternId(own, marking.hatch)})" stroke="#1a1a1a" stroke-width=".2" />
    <text class=${marking.solid ? 'on-solid' : 'on-hatch'} x="4.5" y="3.2" font-size="2.9">${key}</text>
  </svg>`;
}

function cells(sheet: ChartSheet, part: ChartPart, index: number): TemplateResult {
  const { chart, layout, markings, inColour } = sheet;
  const { firstRow, endRow, firstColumn, endColumn } = part;
  const { cell } = layout;
  const left = ROOM.words + ROOM.mark;
  const across = endColumn - firstColumn;
  const down = endRow - firstRow;
  const width = left + across * cell.width + ROOM.mark + ROOM.number;
  const height = ROOM.top + down * cell.height + 0.4;
  const prefix = `sheet-${index}-`;
  const byColour = new Map(markings.map((marking) => [marking.colour, marking]));
  const runs = runsOf(chart, part);
  const boxOf = (run: Run) => ({
    x: left + (run.from - firstColumn) * cell.width,
    y: ROOM.top + (run.row - firstRow) * cell.height,
    width: (run.end - run.from) * cell.width,
  });
  return html`<svg
    class="sheet-cells"
    viewBox="0 0 ${width} ${height}"
    width="${width}mm"
    height="${height}mm"
    role="img"
    aria-label="Cells of the chart; the written rows say the same in words"
  >
    <defs>${hatchPatterns(prefix, markings)}</defs>
    ${runs.map((run) => {
      const { x, y, width: wide } = boxOf(run);
      const marking = byColour.get(run.colour);
      if (marking === undefined) return nothing;
      return svg`${
        inColour
          ? svg`<rect x=${x} y=${y} width=${wide} height=${cell.height} fill=${marking.tint} />`
          : nothing
      }${
        marking.hatch === 0
          ? nothing
          : svg`<rect x=${x} y=${y} width=${wide} height=${cell.height} fill="url(#${patternId(prefix, marking.hatch)})" />`
      }`;
    })}
    <path class="grid" d=${gridOf(part, cell, left)} />
    <path class="grid fives" d=${gridOf(part, cell, left, 5)} />
    ${layout.keyed ? keys(sheet, part, byColour, left) : nothing}
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

function keys(
  { chart, layout }: ChartSheet,
  { firstRow, endRow, firstColumn, endColumn }: ChartPart,
  byColour: ReadonlyMap<number, Marking>,
  left: number,
): TemplateResult[] {
  const { cell } = layout;
  const texts: TemplateResult[] = [];
  for (let row = firstRow; row < endRow; row++) {
    for (let column = firstColumn; column < endColumn; column++) {
      const place = chart.cells[row * chart.columns + column] as number;
      texts.push(svg`<text
        class=${byColour.get(place)?.solid ? 'on-solid' : 'on-hatch'}
        x=${short(left + (column - firstColumn + 0.5) * cell.width)}
        y=${short(ROOM.top + (row - firstRow + 0.5) * cell.height + 0.21 * cell.height)}
        font-size=${short(0.6 * cell.height)}
      >${printable(chart.colours[place]?.key ?? '')}</text>`);
    }
  }
  return texts;
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

function short(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
