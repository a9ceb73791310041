import { Edge, Sight, Stick, UNCOUNTED } from '@halfhitch/core';
import { html, nothing, type TemplateResult } from 'lit';
import type { Piece } from '../work/messages.js';
import type { SeenRow } from './messages.js';
import { drawnColour, nextSight, type SeenColour, sightInWords } from './seen-colours.js';
import { unseenRow } from './seen-rows.js';
import type { SeenErrors } from './wrong-panel.js';

export interface SeenFormParts {
  readonly piece: Piece;
  readonly row: SeenRow;
  readonly column: number;
  /** Rows of which something is marked, from 0. */
  readonly marked: readonly number[];
  /** Rows from the top that can be looked into. */
  readonly mostRows: number;
  readonly colours: readonly SeenColour[];
  readonly errors: SeenErrors;
  readonly busy: boolean;
  readonly mark: (change: Partial<SeenRow>, said?: string) => void;
  readonly toRow: (row: number) => void;
  readonly toColumn: (column: number) => void;
  readonly fail: (field: keyof SeenErrors, message: string) => void;
  readonly find: () => void;
  readonly stop: () => void;
  readonly clear: () => void;
  readonly openFile: (file: File) => void;
}

/** Where a maker marks what is seen, a row at a time. */
export function seenForm(parts: SeenFormParts): TemplateResult {
  const { marked, row, busy, errors } = parts;
  return html`<form
    class="seen-form"
    novalidate
    @submit=${(event: Event) => {
      event.preventDefault();
      parts.find();
    }}
  >
    ${rowField(parts)} ${cells(parts)} ${notes(parts)}
    ${
      marked.length === 0
        ? nothing
        : html`<div class="marked" role="group" aria-label="Rows marked">
          <span>Marked so far:</span>
          ${marked.slice(0, 40).map(
            (at) => html`<button
              type="button"
              class="small"
              aria-current=${at === row.row ? 'true' : 'false'}
              @click=${() => parts.toRow(at)}
            >Row ${at + 1}</button>`,
          )}
          ${marked.length > 40 ? html`<span>and ${marked.length - 40} more</span>` : nothing}
        </div>`
    }
    ${errorOf('wrong-whole', errors.whole)}
    <div class="seen-actions">
      ${
        busy
          ? html`<button type="button" @click=${parts.stop}>Stop looking</button>`
          : html`<button type="submit" class="primary">Find what went wrong</button>`
      }
      <label class="button">
        Open a file of what you see
        <input
          class="unseen"
          type="file"
          accept=".txt,.png,.json,text/plain,image/png,application/json"
          aria-describedby=${errors.file ? 'wrong-file-error' : nothing}
          @change=${(event: Event) => {
            const input = event.target as HTMLInputElement;
            const file = input.files?.[0];
            // Emptied, so that the same file can be chosen again once it is mended.
            input.value = '';
            if (file !== undefined) parts.openFile(file);
          }}
        />
      </label>
      <button type="button" ?hidden=${marked.length === 0} @click=${parts.clear}>Clear all marks</button>
    </div>
    ${errorOf('wrong-file', errors.file)}
  </form>`;
}

function errorOf(id: string, message: string | undefined): TemplateResult | typeof nothing {
  return message === undefined || message === ''
    ? nothing
    : html`<p class="field-error" id="${id}-error" role="alert">${message}</p>`;
}

function rowField({ row, mostRows, errors, toRow, fail }: SeenFormParts): TemplateResult {
  const wrong = Boolean(errors.row);
  return html`<div class="row-chooser">
    <div class="field ${wrong ? 'wrong' : ''}">
      <label for="wrong-row">Row of your piece, from the top</label>
      <input
        id="wrong-row"
        type="text"
        inputmode="numeric"
        autocomplete="off"
        maxlength="6"
        aria-invalid=${wrong ? 'true' : 'false'}
        aria-describedby=${wrong ? 'wrong-row-error' : nothing}
        .value=${String(row.row + 1)}
        @input=${(event: Event) => {
          const text = (event.target as HTMLInputElement).value.trim();
          const number = Number(text);
          if (/^\d+$/.test(text) && number >= 1 && number <= mostRows) toRow(number - 1);
          else fail('row', `Give a row from 1 to ${mostRows}.`);
        }}
      />
      ${errorOf('wrong-row', errors.row)}
    </div>
    <button type="button" aria-disabled=${row.row === 0 ? 'true' : 'false'} @click=${() => {
      if (row.row > 0) toRow(row.row - 1);
    }}>Row above</button>
    <button type="button" aria-disabled=${row.row + 1 >= mostRows ? 'true' : 'false'} @click=${() => {
      if (row.row + 1 < mostRows) toRow(row.row + 1);
    }}>Row below</button>
  </div>`;
}

function cells(parts: SeenFormParts): TemplateResult {
  const { piece, row, colours, mark, toColumn } = parts;
  const at = Math.min(parts.column, piece.columns - 1);
  const change = (column: number, way: 1 | -1): void => {
    const drawn = drawnColour(piece, colours, row.row, column);
    const sight = nextSight(row.cells[column] ?? Sight.unknown, drawn, colours.length, way);
    toColumn(column);
    mark(
      { cells: row.cells.map((old, place) => (place === column ? sight : old)) },
      `Column ${column + 1}: ${sightInWords(sight, colours)}.`,
    );
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const targets: Record<string, number> = {
      ArrowLeft: at - 1,
      ArrowRight: at + 1,
      Home: 0,
      End: piece.columns - 1,
    };
    const target = targets[event.key];
    if (target !== undefined) {
      event.preventDefault();
      const column = Math.max(0, Math.min(piece.columns - 1, target));
      toColumn(column);
      (event.currentTarget as HTMLElement)
        .querySelectorAll<HTMLElement>('.seen-cell')
        [column]?.focus();
    } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      change(at, event.key === 'ArrowDown' ? 1 : -1);
    }
  };
  return html`<fieldset class="seen-row">
    <legend>Colours in row ${row.row + 1}, from left to right</legend>
    <div role="toolbar" aria-label="Knots of row ${row.row + 1}" class="seen-cells" @keydown=${onKey}>
      ${row.cells.map((sight, column) => cell(sight, column, column === at, colours, change))}
    </div>
    <div class="seen-fill">
      <button type="button" class="small" @click=${() =>
        mark(
          {
            cells: row.cells.map((_, column) => drawnColour(piece, colours, row.row, column)),
          },
          `Row ${row.row + 1} is marked as drawn.`,
        )}>All as drawn</button>
      <button type="button" class="small" @click=${() =>
        mark(
          unseenRow(row.row, piece.columns),
          `Row ${row.row + 1} is not marked.`,
        )}>Clear this row</button>
    </div>
    <p class="hint">
      Press a knot for the next colour. By keys: arrows left and right from knot to knot, up and
      down through the colours. ? not looked at, a thin line: the bare string;
      ${colours.map(({ key, name }, place) => html`${place === 0 ? '' : ', '}${key}: ${name}`)}.
    </p>
  </fieldset>`;
}

function cell(
  sight: number,
  column: number,
  current: boolean,
  colours: readonly SeenColour[],
  change: (column: number, way: 1 | -1) => void,
): TemplateResult {
  const colour = colours[sight];
  const look = sight === Sight.unknown ? 'unlooked' : colour === undefined ? 'bare' : 'coloured';
  return html`<button
    type="button"
    class="seen-cell ${look}"
    tabindex=${current ? '0' : '-1'}
    aria-label="Column ${column + 1}: ${sightInWords(sight, colours)}"
    @click=${(event: MouseEvent) => change(column, event.shiftKey ? -1 : 1)}
  >
    <span class="seen-number" aria-hidden="true" data-key=${column + 1}></span>
    <halfhitch-swatch .colour=${colour?.hex ?? ''}></halfhitch-swatch>
    <span
      class="seen-key"
      aria-hidden="true"
      data-key=${look === 'unlooked' ? '?' : (colour?.key ?? '')}
    ></span>
  </button>`;
}

const EDGES: readonly (readonly [number, string])[] = [
  [Edge.unknown, 'not looked at'],
  [Edge.straight, 'straight'],
  [Edge.out, 'steps out'],
  [Edge.in, 'pulls in'],
];

const OFF: readonly (readonly [SeenRow['off'], string])[] = [
  ['no', 'no, or not looked at'],
  ['left', 'yes, to the left'],
  ['right', 'yes, to the right'],
  ['either', 'yes, but no telling which way'],
];

function notes(parts: SeenFormParts): TemplateResult {
  const { row, errors, mark, fail } = parts;
  const wrong = Boolean(errors.knots);
  return html`<fieldset class="seen-notes">
    <legend>What else shows in row ${row.row + 1}</legend>
    ${edgeField(parts, 0)} ${edgeField(parts, 1)}
    <div class="field ${wrong ? 'wrong' : ''}">
      <label for="wrong-knots">Knots counted</label>
      <input
        id="wrong-knots"
        type="text"
        inputmode="numeric"
        autocomplete="off"
        maxlength="6"
        aria-invalid=${wrong ? 'true' : 'false'}
        aria-describedby=${wrong ? 'wrong-knots-error' : nothing}
        .value=${row.knots === UNCOUNTED ? '' : String(row.knots)}
        @input=${(event: Event) => {
          const text = (event.target as HTMLInputElement).value.trim();
          if (text === '' || /^\d{1,4}$/.test(text)) {
            fail('knots', '');
            mark({ knots: text === '' ? UNCOUNTED : Number(text) });
          } else fail('knots', 'Give a whole number from 0 to 9999, or leave it empty.');
        }}
      />
      ${errorOf('wrong-knots', errors.knots)}
    </div>
    <div class="field">
      <label for="wrong-off">Colours one column off</label>
      <select id="wrong-off" @change=${(event: Event) =>
        mark({ off: (event.target as HTMLSelectElement).value as SeenRow['off'] })}>
        ${OFF.map(([value, words]) => html`<option value=${value} .selected=${row.off === value}>${words}</option>`)}
      </select>
    </div>
    <div class="sticks">${stickField(parts, 0)} ${stickField(parts, 1)}</div>
  </fieldset>`;
}

function edgeField({ row, mark }: SeenFormParts, side: 0 | 1): TemplateResult {
  const name = side === 0 ? 'left' : 'right';
  return html`<div class="field">
    <label for="wrong-edge-${name}">The ${name} edge</label>
    <select id="wrong-edge-${name}" @change=${(event: Event) => {
      const edge = Number((event.target as HTMLSelectElement).value);
      mark({ edges: side === 0 ? [edge, row.edges[1]] : [row.edges[0], edge] });
    }}>
      ${EDGES.map(([value, words]) => html`<option value=${String(value)} .selected=${row.edges[side] === value}>${words}</option>`)}
    </select>
  </div>`;
}

function stickField({ row, mark }: SeenFormParts, side: 0 | 1): TemplateResult {
  return html`<label class="check">
    <input
      type="checkbox"
      .checked=${row.sticks[side] === Stick.yes}
      @change=${(event: Event) => {
        const stick = (event.target as HTMLInputElement).checked ? Stick.yes : Stick.unknown;
        mark({ sticks: side === 0 ? [stick, row.sticks[1]] : [row.sticks[0], stick] });
      }}
    />
    A lead sticks out on the ${side === 0 ? 'left' : 'right'}
  </label>`;
}
