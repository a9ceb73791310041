import { CHART_LIMITS } from '@halfhitch/core';
import { newId } from '../project/new-id.js';
import { nameOf, type Project, renamed } from '../project/project.js';
import { figures } from '../view/figures.js';
import { StoreError } from './errors.js';
import type { LeftWork } from './left-work.js';
import { STORE_LIMITS } from './limits.js';
import { cellsOf, headOf } from './project-record.js';
import type { Shelves } from './shelves.js';
import { changedOf, nameIn, revisionOf } from './unread-record.js';

/**
 * Puts a project in its place, over what lies there.
 *
 * @param may decides that from what lies there, and throws if not
 * @returns its revision
 */
export async function putProject(
  shelves: Shelves,
  project: Project,
  may: (there: unknown) => void,
): Promise<number> {
  const there = await shelves.get('projects', project.id);
  may(there);
  if (there === undefined) await refuseTooMany(shelves);
  return put(shelves, project, revisionOf(there) + 1);
}

/**
 * Puts a project in its place, after a copy was made of what lies there.
 *
 * @param copy the id of the copy
 * @returns the project's revision
 */
export async function putBeside(shelves: Shelves, project: Project, copy: string): Promise<number> {
  const { id } = project;
  const there = await shelves.get('projects', id);
  if (there !== undefined) {
    await refuseTooMany(shelves);
    for (const shelf of ['charts', 'progress'] as const) {
      const record = await shelves.get(shelf, id);
      if (record !== undefined) await shelves.put(shelf, copy, record);
    }
    await shelves.put('projects', copy, { ...(there as object), name: besideName(nameIn(there)) });
  }
  return put(shelves, project, revisionOf(there) + 1);
}

/**
 * Puts what a page handed over in its place; where another window has kept something later since,
 * as a project of its own.
 */
export async function putLeft(shelves: Shelves, { project, base, sent }: LeftWork): Promise<void> {
  const there = await shelves.get('projects', project.id);
  const changed = changedOf(there);
  // It was kept just then, after all.
  if (changed === project.changed) return;
  const last = revisionOf(there);
  // What the page itself had sent off, and could no longer hear of.
  const own = last === base + 1 && changed === sent;
  if (last <= base || own) await put(shelves, project, last + 1);
  else await put(shelves, { ...renamed(project, besideName(nameOf(project))), id: newId() }, 1);
}

async function put(shelves: Shelves, project: Project, revision: number): Promise<number> {
  await shelves.put('charts', project.id, cellsOf(project));
  await shelves.put('projects', project.id, headOf(project, revision));
  return revision;
}

async function refuseTooMany(shelves: Shelves): Promise<void> {
  if ((await shelves.keys('projects')).length < STORE_LIMITS.projects) return;
  throw new StoreError(
    'too-many',
    `There are ${figures(STORE_LIMITS.projects)} projects already, so this one is not kept. Export it to a file, or erase projects that you no longer need.`,
  );
}

/** What the copy of a project is called that another window has kept. */
function besideName(name: string): string {
  const added = ' (other window)';
  return `${name.slice(0, CHART_LIMITS.maxName - added.length)}${added}`.trim();
}
