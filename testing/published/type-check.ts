import ts from 'typescript';

/** What TypeScript says of some files of a project; each with its place and its message. */
export function typeFindings(
  files: readonly string[],
  resolution: 'nodenext' | 'bundler',
  lib: readonly string[],
): string[] {
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2022,
    lib: lib.map((name) => `lib.${name}.d.ts`),
    strict: true,
    exactOptionalPropertyTypes: true,
    verbatimModuleSyntax: true,
    resolveJsonModule: true,
    // TypeScript's own files are not what is looked at here.
    skipLibCheck: false,
    skipDefaultLibCheck: true,
    types: [],
    noEmit: true,
    ...(resolution === 'nodenext'
      ? { module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext }
      : { module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler }),
  };
  const program = ts.createProgram([...files], options);
  return ts.getPreEmitDiagnostics(program).map((found) => {
    const at =
      found.start === undefined
        ? undefined
        : found.file?.getLineAndCharacterOfPosition(found.start);
    const message = ts.flattenDiagnosticMessageText(found.messageText, ' ');
    return `${resolution}: ${found.file?.fileName ?? ''}:${(at?.line ?? 0) + 1}: ${message}`;
  });
}
