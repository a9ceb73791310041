import { CHART_LIMITS, EDGE_TECHNIQUES, START_SIDES } from '../chart/chart.js';
import { readColour, readName } from '../chart/json.js';
import { characters } from '../chart/legend.js';
import { checkHeader, unknownProperty } from '../document/header.js';
import { JsonText, type Properties } from '../document/json.js';
import { sizeInWords } from '../document/limits.js';
import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import type { ThreadString } from '../model/strings.js';
import { PLAN_FORMAT, PLAN_LIMITS, PLAN_VERSION, type PlanLimits } from './format.js';
import { StepReader } from './parse-steps.js';
import type { Plan } from './plan.js';

const REQUIRED = ['format', 'version', 'edge', 'start', 'chart', 'strings', 'rows'];
const OPTIONAL = ['name'];
const STRING_KEYS = ['id', 'role', 'colour', 'name'];
const HUNG_KEYS = ['id', 'colour', 'name'];
const CHART_KEYS = ['rows', 'columns'];
const NOT_IN_ID = /[\p{Cc}\p{Cf}\p{Cs}\p{Z}]/u;

/**
 * Reads a plan document, version 1; `schema/plan-1.schema.json` of this package describes it.
 * Whether the steps can be knotted, and what they show, is not asked here: the verifier says.
 * The labels `row` and `direction` are for the reader's eye; only the order of the steps counts.
 *
 * @throws InputError with line, column and path
 */
export function readPlan(text: string, limits: PlanLimits = PLAN_LIMITS): Plan {
  if (text.length > limits.size) {
    throw new InputError(
      'file-too-large',
      'The plan is too long.',
      {},
      `A plan can have at most ${sizeInWords(limits.size)}; plan the chart in parts.`,
    );
  }
  const json = new JsonText(text);
  const outline = json.outline();
  checkHeader(json, outline, {
    format: PLAN_FORMAT,
    noun: 'plan',
    version: PLAN_VERSION,
    required: REQUIRED,
    optional: OPTIONAL,
  });
  const name = outline.has('name') ? value(json, outline, 'name', () => readName(json)) : '';
  const edge = value(json, outline, 'edge', () => json.word(EDGE_TECHNIQUES));
  const start = value(json, outline, 'start', () => json.word(START_SIDES));
  const size = value(json, outline, 'chart', () => readSize(json));
  const strings = value(json, outline, 'strings', () => readStrings(json, limits));
  const steps = value(json, outline, 'rows', () => new StepReader(json, strings, limits).rows());
  const hung = strings.filter((string) => string.role === 'base').map((string) => string.id);
  return { name, ...size, edge, start, strings, hung, steps };
}

function value<T>(json: JsonText, outline: Properties, key: string, read: () => T): T {
  return json.property(key, outline.get(key) as number, read);
}

function readSize(json: JsonText): { rows: number; columns: number } {
  const at = json.mark;
  let rows = 0;
  let columns = 0;
  json.object((key) => {
    if (key === 'rows') rows = json.integer(CHART_LIMITS.minRows, CHART_LIMITS.maxRows);
    else if (key === 'columns') {
      columns = json.integer(CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns);
    } else unknownProperty(json, key, CHART_KEYS);
  });
  if (rows === 0 || columns === 0) {
    json.fail(
      'property-missing',
      `The size of the chart has no property "${rows === 0 ? 'rows' : 'columns'}".`,
      'Write it as {"rows": 24, "columns": 14}.',
      at,
    );
  }
  return { rows, columns };
}

/**
 * Reads the list of strings.
 *
 * @param everyRole the role of every string, in documents that give none
 */
export function readStrings(
  json: JsonText,
  limits: PlanLimits,
  everyRole?: ThreadString['role'],
): readonly ThreadString[] {
  const strings: ThreadString[] = [];
  const ids = new Set<string>();
  json.array((index) => {
    const at = json.mark;
    if (index === limits.strings) {
      json.fail(
        'too-many-strings',
        `There are more than ${limits.strings} strings.`,
        `A plan can have at most ${limits.strings}.`,
      );
    }
    const string = readString(json, limits, everyRole);
    if (ids.has(string.id)) {
      json.fail(
        'string-twice',
        `There are two strings ${quoted(string.id)}.`,
        'Give each string an id of its own.',
        at,
      );
    }
    ids.add(string.id);
    strings.push(string);
  });
  return strings;
}

function readString(
  json: JsonText,
  limits: PlanLimits,
  everyRole?: ThreadString['role'],
): ThreadString {
  const at = json.mark;
  let id: string | undefined;
  let role = everyRole;
  let colour: string | undefined;
  let name = '';
  json.object((key) => {
    if (key === 'id') id = readId(json, limits);
    else if (key === 'role' && everyRole === undefined) role = json.word(['base', 'lead'] as const);
    else if (key === 'colour') colour = readColour(json);
    else if (key === 'name') name = readName(json);
    else unknownProperty(json, key, everyRole === undefined ? STRING_KEYS : HUNG_KEYS);
  });
  if (id !== undefined && role !== undefined && colour !== undefined) {
    return { id, role, colour, name };
  }
  const missing = id === undefined ? 'id' : role === undefined ? 'role' : 'colour';
  return json.fail(
    'property-missing',
    `The string has no property "${missing}".`,
    everyRole === undefined
      ? 'Write it as {"id": "L1", "role": "lead", "colour": "#1f6fb2", "name": "lake blue"}.'
      : 'Write it as {"id": "S1", "colour": "#1f6fb2", "name": "lake blue"}.',
    at,
  );
}

function readId(json: JsonText, limits: PlanLimits): string {
  const at = json.mark;
  const id = json.string();
  if (id === '' || characters(id.slice(0, 2 * limits.id + 2)) > limits.id || NOT_IN_ID.test(id)) {
    json.fail(
      'bad-id',
      `${quoted(id)} is no id of a string.`,
      `Use 1 to ${limits.id} visible characters without blanks, such as L1.`,
      at,
    );
  }
  return id;
}
