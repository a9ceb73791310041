import { builtinModules } from 'node:module';
import { dirname, relative, resolve, sep } from 'node:path';
import { nameOf, RENDERERS, RULES } from './rules.mjs';

const BUILT_IN = new Set(builtinModules);

/** `@scope/name/deep` is of the package `@scope/name`. */
export function packageOf(specifier) {
  const parts = specifier.split('/');
  return parts.slice(0, specifier.startsWith('@') ? 2 : 1).join('/');
}

/** Whether an entry such as `./schema/a.json` is given by a key of `exports`, as `./schema/*`. */
function matchesExport(entry, pattern) {
  const [before, after] = pattern.split('*');
  if (after === undefined) return entry === pattern;
  return entry.length > before.length && entry.startsWith(before) && entry.endsWith(after);
}

function isInside(path, folder) {
  return path === folder || path.startsWith(folder + sep);
}

/**
 * What is wrong with one import, in words, or undefined.
 * `place`: { key, part: 'src' | 'test', file, folder, root, exportsOf, dependencies }.
 */
export function checkSpecifier({ specifier, kind }, place) {
  const rule = RULES[place.key];
  const isTest = place.part === 'test';
  const self = nameOf(place.key);

  if (kind === 'library' || kind === 'types') {
    const leaks = rule.pure && !isTest;
    return leaks ? `${self} must not ask for the types of "${specifier}"` : undefined;
  }
  if (specifier === null) {
    return rule.pure && !isTest
      ? 'an import worked out at run time cannot be checked: write the name out'
      : undefined;
  }
  const bare = specifier.replace(/[?#].*$/, '');
  if (kind === 'file' || bare.startsWith('.')) return checkRelative(bare, place, isTest);
  if (bare.startsWith('/')) return 'an absolute path works on one machine only';
  if (bare.startsWith('node:') || BUILT_IN.has(bare)) {
    return isTest || rule.node ? undefined : `${self} must run without Node's "${bare}"`;
  }
  const wanted = packageOf(bare);
  const other = Object.keys(RULES).find((key) => nameOf(key) === wanted);
  if (other !== undefined) return checkWorkspace(bare, wanted, other, place, rule, self);
  if (rule.pure && RENDERERS.test(wanted)) return `${self} must not use "${wanted}"`;
  const listed = isTest ? place.testDependencies : place.dependencies;
  if (bare.startsWith('virtual:') || listed.has(wanted)) return undefined;
  return `"${wanted}" is not among the ${isTest ? '' : 'own '}dependencies in package.json`;
}

function checkRelative(specifier, { file, folder, root, part }, isTest) {
  const target = resolve(dirname(file), specifier);
  const allowed = isTest
    ? [folder, resolve(root, 'testing'), resolve(root, 'scripts', 'lib')]
    : [resolve(folder, part)];
  if (allowed.some((inside) => isInside(target, inside))) return undefined;
  // The package's own manifest and schemas are data, not code.
  if (isInside(target, folder) && target.endsWith('.json')) return undefined;
  const shown = relative(root, target).split(sep).join('/');
  return isTest
    ? `a test may only reach into its own package and testing/, not ${shown}`
    : `${shown} is outside the package's src`;
}

function checkWorkspace(specifier, wanted, other, place, rule, self) {
  if (other !== place.key && !rule.uses.includes(other)) {
    return `${self} must not import ${wanted}: imports go app, cli -> simulator -> geometry -> core`;
  }
  const entry = `.${specifier.slice(wanted.length)}`;
  if (!place.exportsOf(other).some((pattern) => matchesExport(entry, pattern))) {
    return `"${specifier}" is not exported by ${wanted}`;
  }
  const listed = place.part === 'test' ? place.testDependencies : place.dependencies;
  if (other === place.key || listed.has(wanted)) return undefined;
  return `"${wanted}" is not among the dependencies in package.json`;
}
