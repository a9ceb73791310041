import type { Chart } from '../chart/chart.js';
import { readChart } from '../chart/read.js';
import { listed } from '../document/quote.js';
import { decodeUtf8 } from '../document/utf8.js';
import { InputError } from '../errors.js';
import { nothingSeen, type Seen, Sight } from '../mistakes/seen.js';
import type { Plan } from '../plan/plan.js';
import { printable } from '../printable.js';
import { readSeenText } from './seen-text.js';

/**
 * Reads what was seen of a piece from a file: rows of colours as a text chart has them, with `?`
 * where nothing was looked at, and notes; or any chart, which then shows the piece as it is.
 *
 * @param fileName for messages; nothing is opened
 * @throws InputError naming the file
 */
export function readSeen(bytes: Uint8Array, fileName: string, plan: Plan): Seen {
  try {
    // A picture by its first bytes, a chart document by its opening brace; see readChart.
    const picture = bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47;
    if (picture || bytes.length === 0) return seenOfChart(readChart(bytes, '').chart, plan);
    const text = decodeUtf8(bytes);
    if (/^\s*\{\s*"/.test(text.slice(0, 1000))) {
      return seenOfChart(readChart(bytes, '').chart, plan);
    }
    return readSeenText(text, plan);
  } catch (error) {
    throw error instanceof InputError && fileName !== '' ? error.inFile(fileName) : error;
  }
}

/** A piece whose every knot shows the colour that the chart has there. */
export function seenOfChart(chart: Chart, plan: Plan): Seen {
  if (chart.columns !== plan.columns) {
    throw new InputError(
      'other-width',
      `The rows seen are ${chart.columns} knots wide, but the plan is ${plan.columns} wide.`,
      {},
      'Draw one knot for each base string.',
    );
  }
  const places = chart.colours.map((colour) => coloursPlace(plan, colour.hex, colour.name));
  const used = new Set(chart.cells);
  chart.colours.forEach((colour, at) => {
    if (places[at] === undefined && used.has(at)) unknownColour(plan, colour.hex, {});
  });
  const seen = nothingSeen(chart.rows, chart.columns, leadColours(plan));
  chart.cells.forEach((colour, cell) => {
    seen.cells[cell] = places[colour] ?? Sight.bare;
  });
  return seen;
}

/** Colours of the plan's leads, each once. */
export function leadColours(plan: Plan): string[] {
  const leads = plan.strings.filter(({ role }) => role === 'lead');
  return [...new Set(leads.map(({ colour }) => colour))];
}

/**
 * The place of a colour among those of the leads, by its value or else by its name; Sight.bare
 * for the colour of the base strings.
 */
export function coloursPlace(plan: Plan, hex: string, name: string): number | undefined {
  const colours = leadColours(plan);
  const at = colours.indexOf(hex);
  if (at >= 0) return at;
  const called = name.trim().toLowerCase();
  const namesake = plan.strings.find(
    (string) => string.role === 'lead' && called !== '' && string.name.toLowerCase() === called,
  );
  if (namesake !== undefined) return colours.indexOf(namesake.colour);
  const bare = plan.strings.some(({ role, colour }) => role === 'base' && colour === hex);
  return bare ? Sight.bare : undefined;
}

export function unknownColour(plan: Plan, hex: string, place: { line?: number }): never {
  const known = leadColours(plan).slice(0, 8);
  throw new InputError(
    'colour-not-in-plan',
    `No string of the plan has the colour ${printable(hex)}.`,
    place,
    `Use the plan's colours, such as ${listed(known)}.`,
  );
}
