import { readFileSync } from 'node:fs';

/** Rows of a table of facts as fields by name; its first line names the source. */
export function facts(name: string): Record<string, string>[] {
  const file = new URL(`../facts/${name}.csv`, import.meta.url);
  const [source, header, ...rows] = readFileSync(file, 'utf8').trim().split('\n');
  if (!source?.startsWith('# ') || header === undefined) throw new Error(`${name} has no source.`);
  const names = header.split(',');
  return rows.map((row) => {
    const fields = row.split(',');
    return Object.fromEntries(names.map((field, i) => [field, fields[i] as string]));
  });
}
