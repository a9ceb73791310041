/** Where the tests lie that are asked of a mutant of the planners and the verifiers. */
const FOLDERS = ['plan', 'verify', 'plan-file', 'diagonal/verify'];
const FILES = ['reading', 'simulate', 'repeat', 'files/plan'].map(
  (name) => `diagonal/${name}.test.ts`,
);

/** Whether a file of `packages/core/test`, named from there, is one of them. */
export function isAsked(path) {
  return FILES.includes(path) || FOLDERS.some((folder) => path.startsWith(`${folder}/`));
}
