/** What can be told of a record of which it is not known whether it is sound. */

/** How often it was kept; 0 where it does not say. */
export function revisionOf(record: unknown): number {
  const revision = (record as { revision?: unknown } | null | undefined)?.revision;
  return typeof revision === 'number' && Number.isSafeInteger(revision) ? revision : 0;
}

/** When what it holds was changed, as it says. */
export function changedOf(record: unknown): unknown {
  return (record as { changed?: unknown } | null | undefined)?.changed;
}

/** The name of what it holds, or as much as can be read of it. */
export function nameIn(record: unknown): string {
  const name = (record as { name?: unknown } | null | undefined)?.name;
  return typeof name === 'string' ? name.slice(0, 200) : '';
}
