import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { JsonText } from '../../src/document/json.js';
import { readOrRefusal } from '../support/refusal.js';

/** Whether the language's own parser takes a text for an object with distinct properties. */
function isObject(text: string): boolean {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value);
  } catch {
    return false;
  }
}

function isTaken(text: string): boolean {
  const outcome = readOrRefusal(() => new JsonText(text).outline());
  // JSON.parse takes the second of two properties with the same name; the reader takes neither.
  fc.pre(!(outcome instanceof Error) || outcome.code !== 'json-twice');
  return !(outcome instanceof Error);
}

const anyObject = fc.dictionary(fc.string({ unit: 'binary' }), fc.jsonValue({ maxDepth: 5 }));

describe('JSON text', () => {
  it('is taken just when JSON.parse takes it', () => {
    const spaced = fc
      .tuple(anyObject, fc.constantFrom(undefined, 1, '\t'))
      .map(([value, indent]) => JSON.stringify(value, null, indent));
    fc.assert(fc.property(spaced, (text) => isTaken(text)));
  });

  it('is refused after a change just when JSON.parse refuses it', () => {
    const change = fc.record({
      at: fc.nat(),
      cut: fc.integer({ min: 0, max: 3 }),
      put: fc.oneof(
        fc.constantFrom('', '0', '-', '.', 'e5', '"', '\\', '\\u12', '\\u00e4', ',', ':', '{', ']'),
        fc.string({ unit: 'binary', maxLength: 2 }),
      ),
    });
    fc.assert(
      fc.property(anyObject, change, (value, { at, cut, put }) => {
        const text = JSON.stringify(value);
        const start = at % (text.length + 1);
        const changed = text.slice(0, start) + put + text.slice(start + cut);
        expect(isTaken(changed)).toBe(isObject(changed));
      }),
      { numRuns: 2000 },
    );
  });

  it('says where each property begins, and reads it from there', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.string({ unit: 'binary' })), (value) => {
        const json = new JsonText(JSON.stringify(value));
        const found = [...json.outline()].map(([key, at]) => [
          key,
          json.property(key, at, () => json.string()),
        ]);
        expect(Object.fromEntries(found)).toEqual(value);
      }),
    );
  });
});
