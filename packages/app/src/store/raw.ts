import { type Backing, OF_A_PROJECT } from './shelves.js';

/** Deeper, nothing that was ever kept goes. */
const DEEPEST = 12;

/** All that lies there of a project, however broken, as JSON text in a file. */
export async function rawFile(backing: Backing, id: string): Promise<Blob> {
  const parts: Record<string, unknown> = {};
  for (const shelf of OF_A_PROJECT) {
    try {
      parts[shelf] = await backing.work([shelf], 'readonly', (shelves) => shelves.get(shelf, id));
    } catch {
      parts[shelf] = 'The browser cannot read it.';
    }
  }
  return new Blob([rawText({ id, ...parts })], { type: 'application/json' });
}

/** A record as text, however broken, so that it can be sent to someone who may mend it. */
export function rawText(record: unknown): string {
  return JSON.stringify(plain(record, 0), null, 1) ?? 'null';
}

function plain(value: unknown, depth: number): unknown {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (typeof value !== 'object') return String(value);
  if (depth > DEEPEST) return 'deeper than this goes';
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    return Array.from(value as unknown as ArrayLike<number>);
  }
  if (Array.isArray(value)) return value.map((entry) => plain(entry, depth + 1));
  if (value instanceof Blob) return `a file of ${value.size} bytes`;
  return Object.fromEntries(
    Object.entries(value).map(([name, entry]) => [name, plain(entry, depth + 1)]),
  );
}
