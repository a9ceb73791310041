/**
 * Who may import whom. The order is app, cli -> simulator -> geometry -> core: `uses` lists the
 * workspace packages a package may import. A `pure` package runs anywhere: no page, no Node, no
 * renderer. `node`: whether its sources may use Node's own modules.
 */
export const RULES = {
  core: { uses: [], pure: true, node: false },
  geometry: { uses: ['core'], pure: true, node: false },
  simulator: { uses: ['core', 'geometry'], pure: false, node: false },
  app: { uses: ['core', 'geometry', 'simulator'], pure: false, node: false },
  cli: { uses: ['core', 'geometry', 'simulator'], pure: false, node: true },
};

/** The names that packages of the workspace have towards each other. */
export function nameOf(key) {
  return key === 'cli' ? 'halfhitch' : `@halfhitch/${key}`;
}

/** Packages that draw on a page, which a pure package must not even depend on. */
export const RENDERERS = /^(lit|three|@lit\/.*|@lit-labs\/.*|lit-html|lit-element|@types\/three)$/;

/** Compiler settings that every package must keep. */
export const STRICT = {
  strict: true,
  noUncheckedIndexedAccess: true,
  exactOptionalPropertyTypes: true,
  noImplicitOverride: true,
  verbatimModuleSyntax: true,
};
