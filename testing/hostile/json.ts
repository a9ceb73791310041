import fc from 'fast-check';
import { CHARACTERS, NAMES, NUMBERS } from './pieces.js';

const STRING = /"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+|\s+|"/gsu;

/** Values as JSON has them, and as it does not, where another value stood. */
const VALUES: readonly string[] = [
  ...NUMBERS,
  ...CHARACTERS.map((character) => JSON.stringify(character)),
  ...NAMES.map((name) => JSON.stringify(name)),
  'null',
  'true',
  'undefined',
  '""',
  '[]',
  '{}',
  '{"__proto__": {"polluted": true}}',
  '{"constructor": {"prototype": {"polluted": true}}}',
  `"${'x'.repeat(1_000)}"`,
  '"\\ud83d"',
  '"\\u202e"',
  '"\u202e"',
  '[[[[[[]]]]]]',
  '['.repeat(5_000),
  `${'['.repeat(3_000)}${']'.repeat(3_000)}`,
  '{"a":'.repeat(3_000),
  `[${'0,'.repeat(11_000)}0]`,
  `{${Array.from({ length: 2_000 }, (_, i) => `"k${i}":0`).join(',')}}`,
];

const anyChange = fc.record({
  what: fc.constantFrom(
    'value' as const,
    'value' as const,
    'value' as const,
    'name' as const,
    'drop' as const,
    'double' as const,
    'swap' as const,
    'member-twice' as const,
    'repeat-item' as const,
    'cut' as const,
  ),
  at: fc.nat(),
  other: fc.nat(),
  value: fc.constantFrom(...VALUES),
  name: fc.constantFrom(...NAMES),
  times: fc.constantFrom(2, 70, 400, 12_000),
});

type Change = typeof anyChange extends fc.Arbitrary<infer T> ? T : never;

const LONGEST = 40_000;

/**
 * JSON documents as text with one to three of their tokens changed: values of other sorts and sizes,
 * names of the language's own objects, members given twice, items repeated thousands of times,
 * brackets nested thousands deep.
 */
export function hostileJson(valid: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .tuple(valid, fc.array(anyChange, { minLength: 1, maxLength: 3 }))
    .map(([text, changes]) => changes.reduce(changed, text));
}

/** The values that a hostile document is made of, parsed: for what is read from objects. */
export const HOSTILE_VALUES: readonly unknown[] = [
  ...VALUES.flatMap((text): unknown[] => {
    try {
      return [JSON.parse(text) as unknown];
    } catch {
      return [];
    }
  }),
  undefined,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  -0,
  new Uint8Array(0),
  new Uint8Array(70_000).fill(255),
  new Float64Array([Number.NaN]),
  new Date(Number.NaN),
  new Map(),
  10n,
];

function changed(text: string, { what, at, other, value, name, times }: Change): string {
  const tokens = text.match(STRING) ?? [];
  const isValue = (token: string) => /^["\d\-tfn]/u.test(token);
  const chosen =
    what === 'name' || what === 'member-twice'
      ? tokens.flatMap((token, i) =>
          token.startsWith('"') && follows(tokens, i) === ':' ? [i] : [],
        )
      : what === 'value' || what === 'repeat-item'
        ? tokens.flatMap((token, i) => (isValue(token) && follows(tokens, i) !== ':' ? [i] : []))
        : tokens.map((_, i) => i);
  if (chosen.length === 0) return text;
  const i = chosen[at % chosen.length] as number;
  const token = tokens[i] as string;
  const put = (...news: string[]) =>
    [...tokens.slice(0, i), ...news, ...tokens.slice(i + 1)].join('');
  switch (what) {
    case 'value':
      return put(value);
    case 'name':
      return put(JSON.stringify(name));
    case 'drop':
      return put();
    case 'double':
      return put(token, token);
    case 'member-twice':
      return put(token, ':', value, ',', token);
    case 'repeat-item': {
      const most = Math.min(times, Math.floor(LONGEST / token.length));
      return put(`${token},`.repeat(most), token);
    }
    case 'swap': {
      const k = chosen[other % chosen.length] as number;
      const swapped = [...tokens];
      swapped[i] = tokens[k] as string;
      swapped[k] = token;
      return swapped.join('');
    }
    case 'cut':
      return tokens.slice(0, i).join('');
  }
}

function follows(tokens: readonly string[], at: number): string | undefined {
  let next = at + 1;
  while (/^\s/u.test(tokens[next] ?? '')) next++;
  return tokens[next];
}
