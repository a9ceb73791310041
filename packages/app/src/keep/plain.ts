import { CHART_LIMITS, type ChartColour } from '@halfhitch/core';

// What is on the screen may have come from a box to write in; what goes into files must be read
// again.

/** A name without what no file may hold. */
export function plainName(name: string): string {
  const plain = name.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ').trim();
  return [...plain].slice(0, CHART_LIMITS.maxName).join('').trim();
}

/** A legend with plain names, in which colours that are the same are one. */
export function plainLegend(colours: readonly ChartColour[]): {
  readonly colours: readonly ChartColour[];
  /** For each colour as it was, where it is now. */
  readonly placeOf: readonly number[];
} {
  const places = new Map<string, number>();
  const kept: ChartColour[] = [];
  const placeOf = colours.map((colour) => {
    const place = places.get(colour.hex);
    if (place !== undefined) return place;
    places.set(colour.hex, kept.length);
    return kept.push({ ...colour, name: plainName(colour.name) }) - 1;
  });
  return { colours: kept, placeOf };
}
