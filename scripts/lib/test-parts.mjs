const PROJECTS = ['unit', 'browser', 'tooling'];

/**
 * Reads the words after `npm test --`: leading names of parts, then words for Vitest (files to
 * run, options). Without a part, everything is run; with words for Vitest only, no checks are.
 */
export function readTestParts(args) {
  const isPart = (word) => word === 'checks' || PROJECTS.includes(word);
  const firstOther = args.findIndex((word) => !isPart(word));
  const parts = firstOther < 0 ? args : args.slice(0, firstOther);
  const rest = args.slice(parts.length);
  if (parts.length === 0) return { checks: rest.length === 0, projects: PROJECTS, rest };
  return {
    checks: parts.includes('checks'),
    projects: PROJECTS.filter((name) => parts.includes(name)),
    rest,
  };
}
