import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';

const SCHEMAS = new URL('../../../core/schema/', import.meta.url);

const ajv = new Ajv2020({ strict: true });
for (const file of readdirSync(SCHEMAS)) {
  ajv.addSchema(JSON.parse(readFileSync(new URL(file, SCHEMAS), 'utf8')) as object);
}

/** Whether a project's document fits the published schema of its version. */
export function fitsProjectSchema(document: unknown): boolean {
  const version = (document as { readonly version?: unknown } | null)?.version;
  const check = ajv.getSchema(`project-${version === 2 ? 2 : 1}.schema.json`);
  if (check === undefined) throw new Error('There is no such schema.');
  return check(document) as boolean;
}
