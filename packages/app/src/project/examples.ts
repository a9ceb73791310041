import type { Project } from './project.js';

/** Projects that came with the page, as long as they are just as they came. */
const shipped = new WeakSet<Project>();

export function setExample(project: Project): void {
  shipped.add(project);
}

/** Whether a project is one of the page's own examples, with nothing changed. */
export function isExample(project: Project): boolean {
  return shipped.has(project);
}
