// Writes the custom-elements manifest from the sources: what editors and catalogues read.
// https://github.com/webcomponents/custom-elements-manifest, schema 1.0.0
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const FOLDER = dirname(dirname(fileURLToPath(import.meta.url)));
const ELEMENTS = join(FOLDER, 'src', 'elements');
const INDEX = join(FOLDER, 'src', 'index.ts');

/** Names of the elements and their classes, from the table in src/index.ts. */
function elementNames() {
  const found = new Map();
  const pattern = /'(halfhitch-[a-z]+)': (Halfhitch\w+),/g;
  for (const [, tag, name] of readFileSync(INDEX, 'utf8').matchAll(pattern)) found.set(name, tag);
  return found;
}

function classesIn(program) {
  const classes = new Map();
  for (const file of program.getSourceFiles()) {
    if (!file.fileName.startsWith(ELEMENTS)) continue;
    ts.forEachChild(file, (node) => {
      if (ts.isClassDeclaration(node) && node.name) classes.set(node.name.text, node);
    });
  }
  return classes;
}

function parentOf(node, classes) {
  const clause = node.heritageClauses?.find((c) => c.token === ts.SyntaxKind.ExtendsKeyword);
  return classes.get(clause?.types[0]?.expression.getText()) ?? null;
}

/** A class and those it is built on, the farthest first. */
function lineage(node, classes) {
  const parent = parentOf(node, classes);
  return parent === null ? [node] : [...lineage(parent, classes), node];
}

/** `@name what - text` of a class's comment; text may run over lines. */
function tagsOf(node, name) {
  return ts
    .getJSDocTags(node)
    .filter((tag) => tag.tagName.text === name)
    .map((tag) => {
      const text = (ts.getTextOfJSDocComment(tag.comment) ?? '').replace(/\s+/g, ' ').trim();
      const [, word = '', description = text] = /^(?:([\w-]+)\s*)?-\s*(.*)$/.exec(text) ?? [];
      return { name: word, description };
    });
}

function descriptionOf(node) {
  const comment = ts.getJSDocCommentsAndTags(node).find(ts.isJSDoc)?.comment;
  return (ts.getTextOfJSDocComment(comment) ?? '').replace(/\s+/g, ' ').trim();
}

/** Attributes that a class declares in its table of properties. */
function declaredAttributes(node) {
  const table = node.members.find(
    (member) => ts.isPropertyDeclaration(member) && member.name.getText() === 'properties',
  );
  if (table?.initializer === undefined) return [];
  return table.initializer.properties.flatMap((property) => {
    const field = property.name.getText();
    const options = property.initializer.getText();
    if (/state: true|attribute: false/.test(options)) return [];
    const name = /attribute: '([^']+)'/.exec(options)?.[1] ?? field.toLowerCase();
    const kind = /type: (\w+)/.exec(options)?.[1]?.toLowerCase() ?? 'string';
    return [{ name, fieldName: field, type: { text: kind } }];
  });
}

function isPublic(member) {
  const modifiers = ts.getCombinedModifierFlags(member);
  const hidden = ts.ModifierFlags.Private | ts.ModifierFlags.Protected | ts.ModifierFlags.Static;
  return (modifiers & hidden) === 0;
}

const LIFE_CYCLE = new Set(['connectedCallback', 'disconnectedCallback']);

function membersOf(node, checker) {
  const members = new Map();
  for (const member of node.members) {
    if (member.name === undefined || !isPublic(member)) continue;
    const name = member.name.getText();
    if (LIFE_CYCLE.has(name)) continue;
    const description = descriptionOf(member);
    if (ts.isMethodDeclaration(member)) {
      const signature = checker.getSignatureFromDeclaration(member);
      members.set(name, {
        kind: 'method',
        name,
        ...(description === '' ? {} : { description }),
        parameters: member.parameters.map((parameter) => ({
          name: parameter.name.getText(),
          type: { text: checker.typeToString(checker.getTypeAtLocation(parameter)) },
        })),
        return: { type: { text: checker.typeToString(signature.getReturnType()) } },
      });
    } else if (ts.isPropertyDeclaration(member) || ts.isGetAccessor(member)) {
      const setter = node.members.some((m) => ts.isSetAccessor(m) && m.name.getText() === name);
      members.set(name, {
        kind: 'field',
        name,
        type: { text: checker.typeToString(checker.getTypeAtLocation(member)) },
        ...(description === '' ? {} : { description }),
        ...(ts.isGetAccessor(member) && !setter ? { readonly: true } : {}),
      });
    }
  }
  return members;
}

/** A file and those it is put together from; other elements have parts of their own. */
function filesFrom(file, found = new Set()) {
  if (found.has(file)) return found;
  found.add(file);
  for (const [, path] of readFileSync(file, 'utf8').matchAll(/from '(\.[^']*)\.js'/g)) {
    if (!path.endsWith('-element')) filesFrom(join(dirname(file), `${path}.ts`), found);
  }
  return found;
}

/** What the styles and templates of classes say of parts and custom properties. */
function partsIn(line) {
  const parts = new Set();
  const properties = new Set();
  const files = line.flatMap((node) => [...filesFrom(node.getSourceFile().fileName)]);
  for (const file of new Set(files)) {
    const text = readFileSync(file, 'utf8');
    for (const [, names] of text.matchAll(/\bpart="([^"]+)"/g)) {
      for (const name of names.split(' ')) parts.add(name);
    }
    for (const [, name] of text.matchAll(/setAttribute\('part', '([^']+)'\)/g)) parts.add(name);
    for (const [name] of text.matchAll(/--halfhitch-[a-z-]+/g)) properties.add(name);
  }
  return { parts: [...parts].sort(), properties: [...properties].sort() };
}

function declarationOf(node, tagName, classes, checker) {
  const line = lineage(node, classes);
  const described = (name) => line.flatMap((one) => tagsOf(one, name));
  const texts = new Map(described('attr').map(({ name, description }) => [name, description]));
  const members = new Map(line.flatMap((one) => [...membersOf(one, checker)]));
  const { parts, properties } = partsIn(line);
  const partTexts = new Map(described('csspart').map((part) => [part.name, part.description]));
  const propertyTexts = new Map(described('cssprop').map((one) => [one.name, one.description]));
  return {
    kind: 'class',
    customElement: true,
    tagName,
    name: node.name.text,
    description: descriptionOf(node),
    superclass: { name: 'LitElement', package: 'lit' },
    attributes: line.flatMap(declaredAttributes).map((attribute) => ({
      ...attribute,
      ...(texts.has(attribute.name) ? { description: texts.get(attribute.name) } : {}),
    })),
    members: [...members.values()],
    events: described('fires').map((event) => ({ ...event, type: { text: 'CustomEvent' } })),
    slots: described('slot'),
    cssParts: parts.map((name) => ({
      name,
      ...(partTexts.has(name) ? { description: partTexts.get(name) } : {}),
    })),
    cssProperties: properties.map((name) => ({
      name,
      ...(propertyTexts.has(name) ? { description: propertyTexts.get(name) } : {}),
    })),
  };
}

export function elementsManifest() {
  const program = ts.createProgram([INDEX], {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ['lib.es2022.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
    strict: true,
    experimentalDecorators: true,
    useDefineForClassFields: false,
    skipLibCheck: true,
  });
  const checker = program.getTypeChecker();
  const classes = classesIn(program);
  const modules = [...elementNames()].map(([name, tag]) => {
    const node = classes.get(name);
    if (node === undefined) throw new Error(`No class ${name} in src/elements.`);
    const source = relative(FOLDER, node.getSourceFile().fileName);
    const path = source.replace(/^src/, 'dist').replace(/\.ts$/, '.js').replaceAll('\\', '/');
    return {
      kind: 'javascript-module',
      path,
      declarations: [declarationOf(node, tag, classes, checker)],
      exports: [
        { kind: 'js', name, declaration: { name, module: path } },
        {
          kind: 'custom-element-definition',
          name: tag,
          declaration: { name, module: path },
        },
      ],
    };
  });
  return { schemaVersion: '1.0.0', readme: 'README.md', modules };
}

export function writeManifest() {
  const file = join(FOLDER, 'dist', 'custom-elements.json');
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, `${JSON.stringify(elementsManifest(), null, 2)}\n`);
}
