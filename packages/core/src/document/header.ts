import type { JsonText, Properties } from './json.js';
import { listed, quoted } from './quote.js';

interface Expected {
  readonly format: string;
  /** What the document is called in a message: "chart". */
  readonly noun: string;
  readonly version: number;
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

/** What to say about a document of ours that is not the one asked for. */
const OTHERS: Readonly<Record<string, string>> = {
  'halfhitch-plan': 'This is a plan. Give the chart it was made from.',
  'halfhitch-chart': 'This is a chart. Plan it first, and give the plan.',
  'halfhitch-diagonal':
    'This is a diagonal pattern. Give it where one is asked for, or plan it first.',
  'halfhitch-diagonal-picture':
    'This is a picture wanted of a diagonal pattern. Let it be solved first, and give the pattern found.',
  'halfhitch-diagonal-plan':
    'This is a plan of a diagonal pattern. Give the pattern it was made from.',
  'halfhitch-project':
    'This is a project of the workbench. Open it there, and export the chart alone.',
};

/** Checks format, version and the names of the properties, in this order, before any value. */
export function checkHeader(json: JsonText, outline: Properties, expected: Expected): void {
  checkFormat(json, outline, expected);
  checkVersion(json, outline, expected);
  const known = [...expected.required, ...expected.optional, '$schema'];
  for (const [key, at] of outline) {
    if (!known.includes(key)) unknownProperty(json, key, known, at);
  }
  const missing = expected.required.find((key) => !outline.has(key));
  if (missing !== undefined) {
    json.fail(
      'property-missing',
      `The ${expected.noun} has no property ${quoted(missing)}.`,
      `A ${expected.noun} needs ${listed(expected.required.map(quoted))}.`,
      0,
    );
  }
  const schema = outline.get('$schema');
  if (schema !== undefined) json.property('$schema', schema, () => json.string());
}

/** Refuses a property: a slip of the pen left unnoticed would change what is knotted. */
export function unknownProperty(
  json: JsonText,
  key: string,
  known: readonly string[],
  at = json.mark,
): never {
  return json.fail(
    'property-unknown',
    `There is no property ${quoted(key)} here.`,
    `Known are ${listed(known.map(quoted))}; correct the name or remove it.`,
    at,
  );
}

function checkFormat(json: JsonText, outline: Properties, expected: Expected): void {
  const wanted = `Write "format": "${expected.format}" if it is a ${expected.noun} of Halfhitch.`;
  const at = outline.get('format');
  if (at === undefined) {
    json.fail('format-missing', `The document does not say what it is.`, wanted, 0);
    return;
  }
  json.property('format', at, () => {
    const format = json.string();
    if (format === expected.format) return;
    const other = Object.hasOwn(OTHERS, format) ? OTHERS[format] : undefined;
    json.fail('format-unknown', `The format is ${quoted(format)}.`, other ?? wanted, at);
  });
}

function checkVersion(json: JsonText, outline: Properties, expected: Expected): void {
  const { version } = expected;
  const wanted = `Write "version": ${version}.`;
  const at = outline.get('version');
  if (at === undefined) {
    json.fail('version-missing', `The ${expected.noun} has no version.`, wanted, 0);
    return;
  }
  json.property('version', at, () => {
    const token = json.glimpse();
    const found = /^-?[0-9.eE+-]+$/.test(token) ? Number(token) : Number.NaN;
    if (found === version) return;
    const what = `The ${expected.noun} has the version ${quoted(token)}.`;
    if (Number.isInteger(found) && found > version) {
      json.fail(
        'version-newer',
        what,
        `This Halfhitch reads version ${version}: update it, or save the ${expected.noun} in that version.`,
      );
    }
    json.fail('version-unknown', what, wanted);
  });
}
