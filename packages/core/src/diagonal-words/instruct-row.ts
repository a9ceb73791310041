import { knotsInRow, slotOfPlace } from '../diagonal/lattice.js';
import type { DiagonalPlan } from '../diagonal/plan.js';
import type { DiagonalKnotReading, DiagonalRowReading } from '../diagonal/reading.js';
import { colourInWords, count, halvesInWords, leadInWords } from '../instructions/wording.js';
import { changesPlaces, type KnotKind, startSide } from '../model/knot.js';
import { stringIndex } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import type { DiagonalInstructionPart, DiagonalRowInstructions } from './parts.js';
import {
  kindInFull,
  orderInWords,
  slotRangeInWords,
  slotsInWords,
  stringsInWords,
} from './wording.js';

/**
 * Written instructions for one row of a diagonal plan. The parts cover every place and every
 * knot's steps, each once and in order.
 */
export function instructDiagonalRow(
  row: DiagonalRowReading,
  plan: DiagonalPlan,
): DiagonalRowInstructions {
  const parts = partsOf(row, plan);
  const places = knotsInRow(plan.lattice, row.row);
  const slots =
    places === 0
      ? 'no places for knots'
      : slotRangeInWords(
          slotOfPlace(plan.lattice, row.row, 0),
          slotOfPlace(plan.lattice, row.row, places - 1),
        );
  return {
    row: row.row,
    heading: `Row ${row.row + 1}, ${slots}`,
    parts,
    sentences: parts.map((part) => [part.text, ...part.substeps].join(' ')).join(' '),
  };
}

/** The knot in each place of the row, or null where none is tied. */
function placesOf(row: DiagonalRowReading, plan: DiagonalPlan): (DiagonalKnotReading | null)[] {
  const places: (DiagonalKnotReading | null)[] = Array(knotsInRow(plan.lattice, row.row)).fill(
    null,
  );
  for (const knot of row.knots) places[knot.place] = knot;
  return places;
}

function partsOf(row: DiagonalRowReading, plan: DiagonalPlan): DiagonalInstructionPart[] {
  const places = placesOf(row, plan);
  const hanging = stringsOf(row.before.front, plan);
  let step = row.knots[0]?.steps.first ?? 0;
  const parts: DiagonalInstructionPart[] = [
    part('row', rowText(row, places, hanging), null, { first: step, end: step }),
  ];
  for (let place = 0; place < places.length; ) {
    const knot = places[place] ?? null;
    let last = place;
    while (last + 1 < places.length && places[last + 1]?.kind === knot?.kind) last++;
    const slot = slotOfPlace(plan.lattice, row.row, place);
    const end = places[last]?.steps.end ?? step;
    const covered = { first: place, last };
    const steps = { first: step, end };
    if (knot === null) {
      if (row.knots.length > 0) {
        parts.push(part('bare', bareText(slot, last - place + 1, hanging), covered, steps));
      }
    } else if (last === place) parts.push(part('knot', knotText(knot), covered, steps));
    else parts.push(runPart(places.slice(place, last + 1), covered, steps));
    step = end;
    place = last + 1;
  }
  if (row.knots.length > 0) {
    const after = orderAfter(row, hanging);
    parts.push(
      part('order', `Then they hang, from the left: ${orderInWords(after)}.`, null, {
        first: step,
        end: step,
      }),
    );
  }
  return parts;
}

function part(
  kind: DiagonalInstructionPart['kind'],
  text: string,
  places: DiagonalInstructionPart['places'],
  steps: DiagonalInstructionPart['steps'],
): DiagonalInstructionPart {
  return { kind, text, substeps: [], places, steps };
}

function stringsOf(ids: readonly string[], { strings }: DiagonalPlan): ThreadString[] {
  const index = stringIndex(strings);
  return ids.flatMap((id) => strings[index.get(id) ?? -1] ?? []);
}

function rowText(
  row: DiagonalRowReading,
  places: readonly (DiagonalKnotReading | null)[],
  hanging: readonly ThreadString[],
): string {
  if (row.knots.length === 0) {
    return `This row has no knots: all strings hang on as they are.`;
  }
  const first = (row.knots[0] as DiagonalKnotReading).slot % 2;
  const end = first + 2 * places.length;
  const idle: string[] = [];
  if (first === 1) idle.push(`${stringsInWords(hanging.slice(0, 1))} at the left edge`);
  if (end < hanging.length) idle.push(`${stringsInWords(hanging.slice(end))} at the right edge`);
  const rest =
    idle.length === 0
      ? 'Every string has a neighbour.'
      : `Leave ${idle.join(' and ')} hanging: ${idle.length === 1 ? 'it has' : 'they have'} no neighbour in this row.`;
  return `${count(row.knots.length, 'knot')}. ${rest}`;
}

function bareText(slot: number, places: number, hanging: readonly ThreadString[]): string {
  const where = slotRangeInWords(slot, slot + 2 * (places - 1));
  const pair = hanging.slice(slot, slot + 2);
  return places === 1
    ? `${cap(where)}: no knot; ${stringsInWords(pair)} hang on side by side, in the same order.`
    : `${cap(where)}: no knots in these ${places} places; their strings hang on in the same order.`;
}

function runPart(
  knots: readonly (DiagonalKnotReading | null)[],
  places: { first: number; last: number },
  steps: { first: number; end: number },
): DiagonalInstructionPart {
  const all = knots.filter((knot) => knot !== null);
  const [first, last] = [all[0], all.at(-1)] as [DiagonalKnotReading, DiagonalKnotReading];
  const text = `${cap(slotRangeInWords(first.slot, last.slot))}: ${first.kind} knots (${all.length}). In each, ${kindInFull(first.kind)}.`;
  return { kind: 'run', text, substeps: all.map(inRun), places, steps };
}

/** A knot whose kind has just been told. */
function inRun(knot: DiagonalKnotReading): string {
  const { tying, held, slot } = knot;
  return `${cap(slotsInWords(slot))}: ${leadInWords(tying)} ties onto ${leadInWords(held)}, and ${colourInWords(tying)} shows.`;
}

function knotText(knot: DiagonalKnotReading): string {
  const { kind, tying, held, slot } = knot;
  const side = startSide(kind);
  return (
    `${cap(slotsInWords(slot))}: a ${kind} knot. ${leadInWords(tying)}, on the ${side}, ties ` +
    `${halvesInWords(kind)} onto ${leadInWords(held)}, and ${colourInWords(tying)} shows. ` +
    placesAfter(kind, tying, held)
  );
}

function placesAfter(kind: KnotKind, tying: ThreadString, held: ThreadString): string {
  const tyingIsLeft = (startSide(kind) === 'left') !== changesPlaces(kind);
  const [left, right] = tyingIsLeft ? [tying, held] : [held, tying];
  const how = changesPlaces(kind) ? 'They change places' : 'They keep their places';
  return `${how}: ${left.id} hangs left, ${right.id} right.`;
}

function orderAfter(row: DiagonalRowReading, hanging: readonly ThreadString[]): ThreadString[] {
  const after = [...hanging];
  for (const { slot, kind } of row.knots) {
    if (!changesPlaces(kind)) continue;
    const [left, right] = [hanging[slot], hanging[slot + 1]];
    if (left === undefined || right === undefined) continue;
    after[slot] = right;
    after[slot + 1] = left;
  }
  return after;
}

function cap(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
