import { basename, join, relative, sep } from 'node:path';
import ts from 'typescript';
import { packageFolder } from '../lib/repository.mjs';
import { nameOf, RULES, STRICT } from './rules.mjs';

/**
 * Checks that no package loosened its compiler settings, and that the program of a pure package
 * sees neither the types of a page nor those of Node, by whatever road they would come in.
 */
export function checkCompilerSettings(key, root) {
  const config = join(packageFolder(key, root), 'tsconfig.json');
  const host = { ...ts.sys, onUnRecoverableConfigFileDiagnostic: () => {} };
  const parsed = ts.getParsedCommandLineOfConfigFile(config, {}, host);
  const shown = relative(root, config).split(sep).join('/');
  if (!parsed) return [`${shown}: cannot be read`];
  const { options } = parsed;
  const wrong = Object.entries(STRICT)
    .filter(([name, value]) => options[name] !== value)
    .map(([name, value]) => `${shown}: "${name}" must be ${value}`);
  if (!RULES[key].pure) return wrong;

  if (options.lib?.join() !== 'lib.es2022.d.ts') wrong.push(`${shown}: "lib" must be ["ES2022"]`);
  if (options.types?.length !== 0) wrong.push(`${shown}: "types" must be []`);
  if (wrong.length > 0) return wrong;
  const program = ts.createProgram({
    rootNames: parsed.fileNames,
    options,
    projectReferences: parsed.projectReferences,
  });
  const foreign = program
    .getSourceFiles()
    .map(({ fileName }) => fileName)
    .filter((name) => /\/lib\.(dom|webworker)|\/@types\/node\//.test(name));
  const [first] = foreign;
  return first === undefined
    ? []
    : [`${shown}: ${nameOf(key)} sees ${basename(first)}, which must not be there`];
}
