import { CutDesk } from '../cut/desk.js';
import { type CutSettings, USUAL_SETTINGS } from '../cut/settings.js';
import type { KnotChoice } from '../work/messages.js';
import { blankChart } from './edit/blank.js';

/** What a knot's proportions depend on: the edges, and how a swatch of the thread came out. */
function keyOf({ edge }: KnotChoice, cut: CutSettings): string {
  const { swatchRows, swatchColumns, swatchWidth, swatchLength } = cut;
  return [edge, swatchRows, swatchColumns, swatchWidth, swatchLength].join('|');
}

const known = new Map<string, number>();
let desk: CutDesk | null = null;

/**
 * Width of a knot by its height, as the piece comes out in the project's thread. Worked out beside
 * the page, from the tight knot and the maker's swatch, by what works out the cut list.
 *
 * @returns null when another question has taken this one's place, or nothing could be worked out
 */
export async function knotAspect(choice: KnotChoice, cut: CutSettings): Promise<number | null> {
  const key = keyOf(choice, cut);
  const already = known.get(key);
  if (already !== undefined) return already;
  desk ??= new CutDesk();
  const chart = blankChart('', { rows: 1, columns: 1 });
  const outcome = await desk.ask({ chart, choice, settings: { ...cut, span: 'chart' } });
  if (outcome === null) return null;
  if ('sheet' in outcome) {
    known.set(key, outcome.sheet.size.aspect);
    return outcome.sheet.size.aspect;
  }
  // Fields that are half filled in say nothing of the thread yet.
  return cut === USUAL_SETTINGS ? null : knotAspect(choice, USUAL_SETTINGS);
}
