import type { Closing } from '@halfhitch/geometry/thread';
import { counted, figures } from '../view/figures.js';
import { metres, putUpsInWords, titleInWords } from './in-words.js';
import type { CutSheet } from './sheet.js';

/** Thread to bind a loop with, or to sew a buckle on with, m (common practice, no source). */
const TO_BIND = 0.5;

/** What to buy, a line for each thing, to be read, copied or printed. */
export function shoppingLines(
  { totals, putUp }: CutSheet,
  closing: Closing,
  buckleWidth: number | null,
): string[] {
  const one = `${figures(putUp / 1_000, 1)} m`;
  const lines = totals.map((total) => {
    const what =
      total.role === 'lead'
        ? 'for the leads'
        : total.role === 'string'
          ? 'for the strings'
          : total.name === ''
            ? 'any colour'
            : 'for the base strings';
    const many = total.mostPutUps === 1 && total.putUps === 1 ? 'put-up' : 'put-ups';
    return `${capital(titleInWords(total))}, ${what}: ${putUpsInWords(total)} ${many} of ${one} (${metres(total.length)} in ${counted(total.pieces, 'piece')})`;
  });
  if (closing.how === 'loop') lines.push(`Any colour, to bind the loop: ${TO_BIND} m`);
  if (closing.how === 'buckle') {
    lines.push(`A buckle for a band up to ${figures(buckleWidth ?? 0)} mm wide`);
    lines.push(`Sewing thread, to sew the buckle on: ${TO_BIND} m`);
  }
  return lines;
}

export function shoppingText(name: string, lines: readonly string[]): string {
  const title = name === '' ? 'To buy' : `To buy for ${name}`;
  return [title, ...lines.map((line) => `- ${line}`)].join('\n');
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
