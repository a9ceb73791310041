import fc from 'fast-check';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Values that are wrong in most places, and right in some. */
const anyValue: fc.Arbitrary<Json> = fc.constantFrom<Json[]>(
  null,
  true,
  0,
  1,
  1.5,
  -1,
  2,
  300,
  301,
  1e308,
  '',
  'b',
  'bb',
  ' b ',
  '\u0301',
  '\n',
  '\ud800',
  '\u2028',
  '#12c',
  '#12C4F6',
  '#12',
  'x'.repeat(201),
  '\u{1f6a3}'.repeat(200),
  '\u{1f6a3}'.repeat(301),
  'straight',
  'left',
  'down',
  'base',
  'lead',
  'turn',
  'knot',
  'B1',
  '\\/<>',
  [],
  {},
  [['b']],
);

/** A document with one to three of its values replaced, removed or added to. */
export function breakDocument(printed: string): fc.Arbitrary<unknown> {
  const change = fc.record({
    what: fc.constantFrom('replace', 'replace', 'remove', 'add'),
    where: fc.nat(),
    value: anyValue,
    name: fc.constantFrom('extra', '__proto__', 'name', '$schema', 'steps', 'slot', 'knots'),
  });
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    let document = JSON.parse(printed) as Json;
    for (const { what, where, value, name } of changes) {
      const paths = pathsOf(document);
      const path = paths[where % paths.length] as (string | number)[];
      document = changed(document, path, what, value, name);
    }
    return document;
  });
}

function pathsOf(value: Json, path: (string | number)[] = []): (string | number)[][] {
  if (value === null || typeof value !== 'object') return [path];
  const parts = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return [path, ...parts.flatMap((part) => pathsOf(memberOf(value, part), [...path, part]))];
}

function memberOf(value: Json, part: string | number): Json {
  return (value as Record<string, Json>)[part] as Json;
}

function changed(
  value: Json,
  path: readonly (string | number)[],
  what: string,
  put: Json,
  name: string,
): Json {
  const [part, ...rest] = path;
  if (part === undefined) {
    if (what !== 'add' || value === null || typeof value !== 'object') return put;
    if (Array.isArray(value)) return [...value, put];
    // A plain assignment would not add a property of the name __proto__.
    return Object.fromEntries([...Object.entries(value), [name, put]]);
  }
  if (Array.isArray(value)) {
    if (rest.length === 0 && what === 'remove') return value.filter((_, i) => i !== part);
    return value.map((item, i) => (i === part ? changed(item, rest, what, put, name) : item));
  }
  const entries = Object.entries(value as Record<string, Json>);
  if (rest.length === 0 && what === 'remove') {
    return Object.fromEntries(entries.filter(([key]) => key !== part));
  }
  return Object.fromEntries(
    entries.map(([key, item]) => [key, key === part ? changed(item, rest, what, put, name) : item]),
  );
}
