import { writeFileSync } from 'node:fs';

/** A value of texts, numbers, lists and records as the formatter leaves it. */
export function literal(value, indent = '') {
  const inner = `${indent}  `;
  if (typeof value === 'string') return `'${value}'`;
  if (typeof value === 'number') return `${value}`;
  if (Array.isArray(value)) {
    return `[\n${value.map((v) => `${inner}${literal(v, inner)},\n`).join('')}${indent}]`;
  }
  const entries = Object.entries(value).map(
    ([key, v]) => `${inner}${key}: ${literal(v, inner)},\n`,
  );
  return `{\n${entries.join('')}${indent}}`;
}

/** Writes one of the files of stored curves. */
export function writeData(name, by, body) {
  writeFileSync(
    new URL(`../src/knot/tightened/${name}.data.ts`, import.meta.url),
    `// Written by ${by}; not to be edited.\n${body}\n`,
  );
}
