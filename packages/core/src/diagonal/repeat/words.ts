import { listed } from '../../document/quote.js';
import type { DiagonalRepeat } from './repeat.js';

/** Cycles that are written out; a pattern can have 150 of them. */
const MOST_CYCLES = 12;
/** Slots of a cycle that are written out. */
const MOST_SLOTS = 24;

/**
 * What a repeat does, in whole sentences: whether it can go on below itself, which strings change
 * places, and when strings, colours and picture come back. Slots count from 1.
 */
export function repeatInWords(repeat: DiagonalRepeat): readonly string[] {
  const { rows, order, coloursCloseAfter } = repeat;
  const said: string[] = [];
  if (!repeat.sidesClose) {
    said.push(
      `After ${rows} ${rows === 1 ? 'row' : 'rows'}, an odd number, the next repeat would begin on the other slots. It goes on as drawn if one row is left without knots in between; what follows is said of the pattern with that row.`,
    );
  }
  if (order === 1n) {
    said.push('After one repeat every string hangs where it hung at the start.');
  } else {
    said.push(...cyclesInWords(repeat));
    said.push(`Every string hangs where it hung at the start after ${times(order)}.`);
    if (coloursCloseAfter === 1n) {
      said.push('The colours hang as at the start after each repeat already.');
    } else if (coloursCloseAfter < order) {
      said.push(`The colours hang as at the start after ${times(coloursCloseAfter)} already.`);
    }
  }
  said.push(pictureInWords(repeat));
  const shifted = repeat.shiftedRepeat;
  if (shifted !== null) {
    const side = shifted.slots > 0 ? 'right' : 'left';
    const far = Math.abs(shifted.slots);
    said.push(
      `What is seen goes on every ${shifted.rows === 1 ? 'row' : `${shifted.rows} rows`}, moved ${far} ${far === 1 ? 'slot' : 'slots'} to the ${side}.`,
    );
  }
  return said;
}

function cyclesInWords({ cycles }: DiagonalRepeat): string[] {
  const moving = cycles.filter(({ length }) => length > 1);
  const said = moving.slice(0, MOST_CYCLES).map((cycle) => {
    const slots = cycle.slice(0, MOST_SLOTS).map((slot) => `${slot + 1}`);
    const more = cycle.length > MOST_SLOTS ? ` and ${cycle.length - MOST_SLOTS} more` : '';
    if (cycle.length === 2) return `The strings of slots ${listed(slots)} change places.`;
    return `The strings of slots ${slots.join(', ')}${more} each take the place of the next, the last that of the first: ${cycle.length} repeats until they are back.`;
  });
  if (moving.length > MOST_CYCLES) {
    said.push(`There are ${moving.length - MOST_CYCLES} more such groups of strings.`);
  }
  const staying = cycles.length - moving.length;
  if (staying > 0) {
    said.push(`${staying} ${staying === 1 ? 'string comes' : 'strings come'} back at once.`);
  }
  return said;
}

function pictureInWords({ rowsApart, smallestRepeatRows }: DiagonalRepeat): string {
  const rows = `${smallestRepeatRows.toLocaleString('en-GB')} rows`;
  if (smallestRepeatRows === BigInt(rowsApart)) {
    return `What is seen begins anew after each repeat, ${rows}, and not before.`;
  }
  if (smallestRepeatRows < BigInt(rowsApart)) {
    return `What is seen begins anew after ${rows} already: a shorter repeat would do.`;
  }
  return `What is seen begins anew only after ${rows}.`;
}

function times(repeats: bigint): string {
  return `${repeats.toLocaleString('en-GB')} repeats`;
}
