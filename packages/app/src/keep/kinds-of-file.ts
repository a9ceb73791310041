import { holdsChart } from './embedded.js';

/** Files of the workbench that are no charts by themselves. */
export type OwnFile = 'project' | 'embedded';

const LOOKED_AT = 400;

/** What a file is by its first bytes, where it is one of the workbench's own; null of all others. */
export function ownFile(bytes: Uint8Array): OwnFile | null {
  if (holdsChart(bytes)) return 'embedded';
  const head = new TextDecoder().decode(bytes.subarray(0, LOOKED_AT));
  return /^\s*\{/.test(head) && /"format"\s*:\s*"halfhitch-project"/.test(head) ? 'project' : null;
}
