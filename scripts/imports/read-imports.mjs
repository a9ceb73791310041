import ts from 'typescript';

/**
 * Every module that a source text asks for, in any of the ways TypeScript knows, and every
 * library or type package it refers to. `specifier` is null where it is worked out at run time.
 */
export function readImports(fileName, text) {
  const file = ts.createSourceFile(fileName, text, ts.ScriptTarget.Latest, false);
  const lineOf = (position) => file.getLineAndCharacterOfPosition(position).line + 1;
  const imports = [];
  const add = (node, specifier) =>
    imports.push({ specifier, line: lineOf(node.getStart(file)), kind: 'module' });
  const addExpression = (node, expression) =>
    add(node, expression && ts.isStringLiteralLike(expression) ? expression.text : null);

  const visit = (node) => {
    if (ts.isImportDeclaration(node) || (ts.isExportDeclaration(node) && node.moduleSpecifier)) {
      addExpression(node, node.moduleSpecifier);
    } else if (ts.isExternalModuleReference(node)) {
      addExpression(node, node.expression);
    } else if (ts.isImportTypeNode(node)) {
      addExpression(node, ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined);
    } else if (ts.isModuleDeclaration(node) && ts.isStringLiteral(node.name)) {
      add(node, node.name.text);
    } else if (ts.isCallExpression(node)) {
      const called = node.expression;
      const asks =
        called.kind === ts.SyntaxKind.ImportKeyword ||
        (ts.isIdentifier(called) && called.text === 'require');
      if (asks) addExpression(node, node.arguments[0]);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);

  for (const [kind, references] of [
    ['library', file.libReferenceDirectives],
    ['types', file.typeReferenceDirectives],
    ['file', file.referencedFiles],
  ]) {
    for (const { fileName: specifier, pos } of references) {
      imports.push({ specifier, line: lineOf(pos), kind });
    }
  }
  return imports;
}
