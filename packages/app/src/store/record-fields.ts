import { CHART_LIMITS, type ChartColour } from '@halfhitch/core';
import { StoreError } from './errors.js';

export function damaged(what: string): never {
  throw new StoreError('damaged', what);
}

export function fieldsOf(value: unknown, what: string): Record<string, unknown> {
  if (typeof value !== 'object' || value === null) damaged(`${what} is missing.`);
  return value as Record<string, unknown>;
}

export function whole(value: unknown, least: number, most: number, what: string): number {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least || value > most) {
    damaged(`${what} is not a whole number from ${least} to ${most}.`);
  }
  return value;
}

/** Milliseconds since 1970, up to what a date can be. */
export function time(value: unknown, what: string): number {
  if (typeof value !== 'number' || !(value >= 0 && value <= 8.64e15))
    damaged(`${what} is no time.`);
  return value;
}

export function oneOf<T>(value: unknown, choices: readonly T[], what: string): T {
  if (!choices.includes(value as T)) damaged(`${what} is not what it can be.`);
  return value as T;
}

export function nameIn(value: unknown, what: string): string {
  if (typeof value !== 'string' || value.length > 2 * CHART_LIMITS.maxName) {
    damaged(`${what} is not a text of at most ${CHART_LIMITS.maxName} characters.`);
  }
  return value;
}

export function coloursIn(value: unknown): ChartColour[] {
  if (
    !Array.isArray(value) ||
    value.length < CHART_LIMITS.minColours ||
    value.length > CHART_LIMITS.maxColours
  ) {
    damaged('The list of colours is not what it can be.');
  }
  const keys = new Set<string>();
  return value.map((entry: unknown, place) => {
    const what = `Colour ${place + 1}`;
    const { key, hex, name } = fieldsOf(entry, what) as Record<'key' | 'hex' | 'name', unknown>;
    if (typeof hex !== 'string' || !/^#[0-9a-f]{6}$/.test(hex)) damaged(`${what} is no colour.`);
    if (typeof key !== 'string' || [...key].length !== 1 || keys.has(key)) {
      damaged(`${what} has no character of its own.`);
    }
    keys.add(key);
    return { key, hex, name: nameIn(name, `The name of colour ${place + 1}`) };
  });
}

export function stringsIn(value: unknown, strings: number, colours: number): Uint8Array {
  if (value instanceof Uint8Array && value.length !== strings) {
    damaged(`There are the colours of ${value.length} strings in place of ${strings}.`);
  }
  return bytesIn(value, strings, colours, 'The list of strings');
}

/**
 * @param end what each byte must stay below
 * @param besides what it may be besides
 */
export function bytesIn(
  value: unknown,
  size: number,
  end: number,
  what: string,
  besides: readonly number[] = [],
): Uint8Array {
  if (!(value instanceof Uint8Array)) damaged(`${what} is missing.`);
  if (value.length !== size) {
    damaged(`${what} has ${value.length} knots in place of ${size}.`);
  }
  for (const byte of value) {
    if (byte >= end && !besides.includes(byte)) damaged(`${what} holds what is not in its legend.`);
  }
  return value;
}
