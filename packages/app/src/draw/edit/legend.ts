import { CHART_LIMITS, type ChartColour, GIVEN_KEYS, InputError } from '@halfhitch/core';
import { checkColour } from './limits.js';
import { checkName } from './names.js';

/** A legend that has been changed. */
export interface LegendEdit {
  readonly colours: readonly ChartColour[];
  /** For each colour of the legend as it was, where it is now. */
  readonly places: readonly number[];
}

type Colours = readonly ChartColour[];

/** A character that stands for none of the colours yet; there are as many as a chart has colours. */
export function freeKey(colours: Colours): string {
  const taken = new Set(colours.map(({ key }) => key));
  return [...GIVEN_KEYS].find((key) => !taken.has(key)) ?? '*';
}

/** What a colour is called: its name, or its value when it has none. */
export function colourName({ name, hex }: Pick<ChartColour, 'name' | 'hex'>): string {
  return name === '' ? hex : name;
}

/** @throws InputError when there are as many as there can be, or this one already */
export function withColour(colours: Colours, hex: string, name: string): LegendEdit {
  const path = `colours[${colours.length}]`;
  if (colours.length >= CHART_LIMITS.maxColours) {
    throw new InputError(
      'too-many-colours',
      `This would be colour ${colours.length + 1}.`,
      { path },
      `A pattern can have at most ${CHART_LIMITS.maxColours} colours: merge two of them first.`,
    );
  }
  const colour = {
    key: freeKey(colours),
    hex: checkHex(colours, hex, colours.length),
    name: checkName(name, `${path}.name`),
  };
  return { colours: [...colours, colour], places: itself(colours) };
}

export function withName(colours: Colours, index: number, name: string): LegendEdit {
  return changed(colours, index, { name: checkName(name, `colours[${index}].name`) });
}

/** @throws InputError when another colour is just the same */
export function withShade(colours: Colours, index: number, hex: string): LegendEdit {
  return changed(colours, index, { hex: checkHex(colours, hex, index) });
}

function changed(
  colours: Colours,
  index: number,
  change: Partial<Pick<ChartColour, 'hex' | 'name'>>,
): LegendEdit {
  checkColour({ colours }, index);
  const before = colours[index] as ChartColour;
  const after = { ...before, ...change };
  const same = after.hex === before.hex && after.name === before.name;
  return {
    colours: same ? colours : colours.map((colour, at) => (at === index ? after : colour)),
    places: itself(colours),
  };
}

function checkHex(colours: Colours, hex: string, index: number): string {
  const place = { path: `colours[${index}].hex` };
  const written = hex.trim().toLowerCase();
  if (!/^#[0-9a-f]{6}$/.test(written)) {
    throw new InputError(
      'bad-colour',
      'This is no colour.',
      place,
      'Write # and six digits from 0-9 and a-f, such as #1f6fb2.',
    );
  }
  const twin = colours.findIndex((other, at) => at !== index && other.hex === written);
  if (twin >= 0) {
    throw new InputError(
      'colour-twice',
      `Colour ${twin + 1}, ${colourName(colours[twin] as ChartColour)}, is just the same.`,
      place,
      'Change the shade a little, or merge the two colours.',
    );
  }
  return written;
}

/** The legend in another order. */
export function withMoved(colours: Colours, from: number, to: number): LegendEdit {
  checkColour({ colours }, from);
  checkColour({ colours }, to);
  if (from === to) return { colours, places: itself(colours) };
  const order = itself(colours);
  order.splice(to, 0, ...order.splice(from, 1));
  return reordered(colours, order);
}

/** All that is in one colour goes to another; both stay in the legend. */
export function withReplaced(colours: Colours, from: number, to: number): LegendEdit {
  checkColour({ colours }, from);
  checkColour({ colours }, to);
  return { colours, places: itself(colours).map((at) => (at === from ? to : at)) };
}

/** All that is in one colour goes to another, and the first leaves the legend. */
export function withMerged(colours: Colours, from: number, into: number): LegendEdit {
  const replaced = withReplaced(colours, from, into);
  if (from === into) return replaced;
  const kept = itself(colours).filter((index) => index !== from);
  const { colours: left, places } = reordered(colours, kept);
  return { colours: left, places: replaced.places.map((at) => places[at] as number) };
}

/**
 * A colour that is used nowhere leaves the legend.
 *
 * @param place of a knot that has it; null where none has
 * @throws InputError when it is used somewhere, or is the only one
 */
export function withDeleted(
  colours: Colours,
  index: number,
  place: { readonly row?: number; readonly column?: number } | null,
): LegendEdit {
  checkColour({ colours }, index);
  if (place !== null) {
    throw new InputError(
      'colour-in-use',
      `${colourName(colours[index] as ChartColour)} is drawn here.`,
      place,
      'Merge it into another colour instead.',
    );
  }
  return withMerged(colours, index, index === 0 ? 1 : 0);
}

/** Some of the colours in a new order. All that are used must be among them. */
function reordered(colours: Colours, order: readonly number[]): LegendEdit {
  const places = colours.map(() => 0);
  order.forEach((index, place) => {
    places[index] = place;
  });
  return { colours: order.map((index) => colours[index] as ChartColour), places };
}

function itself(colours: Colours): number[] {
  return colours.map((_, index) => index);
}
