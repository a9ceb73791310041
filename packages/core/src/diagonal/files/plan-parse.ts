import { readName } from '../../chart/json.js';
import { checkHeader, unknownProperty } from '../../document/header.js';
import { JsonText, type Properties } from '../../document/json.js';
import { sizeInWords } from '../../document/limits.js';
import { InputError } from '../../errors.js';
import type { ThreadString } from '../../model/strings.js';
import { PLAN_LIMITS, type PlanLimits } from '../../plan/format.js';
import { readStrings } from '../../plan/parse.js';
import { StepReader } from '../../plan/parse-steps.js';
import { DIAGONAL_LIMITS } from '../lattice.js';
import type { DiagonalPlan } from '../plan.js';
import { readFirst } from './json-parts.js';
import { DIAGONAL_PLAN_FORMAT, DIAGONAL_PLAN_VERSION } from './plan-print.js';

/** Stated limits of a diagonal plan's document. */
export const DIAGONAL_PLAN_LIMITS: PlanLimits = {
  ...PLAN_LIMITS,
  strings: DIAGONAL_LIMITS.maxStrings,
};

/**
 * Reads the plan of a diagonal pattern, version 1; `schema/diagonal-plan-1.schema.json` of this
 * package describes it. The strings hang in the order in which they are listed. Whether the steps
 * can be knotted, and what they show, is not asked here: the verifier says.
 *
 * @throws InputError with line, column and path
 */
export function readDiagonalPlan(
  text: string,
  limits: PlanLimits = DIAGONAL_PLAN_LIMITS,
): DiagonalPlan {
  if (text.length > limits.size) {
    throw new InputError(
      'file-too-large',
      'The plan is too long.',
      {},
      `A plan can have at most ${sizeInWords(limits.size)}; plan the pattern in parts.`,
    );
  }
  const json = new JsonText(text);
  const outline = json.outline();
  checkHeader(json, outline, {
    format: DIAGONAL_PLAN_FORMAT,
    noun: 'plan of a diagonal pattern',
    version: DIAGONAL_PLAN_VERSION,
    required: ['format', 'version', 'lattice', 'strings', 'rows'],
    optional: ['name'],
  });
  const name = outline.has('name') ? value(json, outline, 'name', () => readName(json)) : '';
  const size = value(json, outline, 'lattice', () => readSize(json));
  const strings = value(json, outline, 'strings', () => readHungStrings(json, limits));
  const steps = value(json, outline, 'rows', () => new StepReader(json, strings, limits).rows());
  return {
    name,
    lattice: { strings: strings.length, ...size },
    strings,
    hung: strings.map(({ id }) => id),
    steps,
  };
}

function value<T>(json: JsonText, outline: Properties, key: string, read: () => T): T {
  return json.property(key, outline.get(key) as number, read);
}

function readSize(json: JsonText): { rows: number; first: 0 | 1 } {
  const at = json.mark;
  let rows = 0;
  let first: 0 | 1 = 0;
  json.object((key) => {
    if (key === 'rows') rows = json.integer(DIAGONAL_LIMITS.minRows, DIAGONAL_LIMITS.maxRows);
    else if (key === 'first') first = readFirst(json);
    else unknownProperty(json, key, ['rows', 'first']);
  });
  if (rows === 0) {
    json.fail(
      'property-missing',
      'The lattice has no property "rows".',
      'Write it as {"rows": 24, "first": 1}.',
      at,
    );
  }
  return { rows, first };
}

function readHungStrings(json: JsonText, limits: PlanLimits): readonly ThreadString[] {
  const at = json.mark;
  const strings = readStrings(json, limits, 'base');
  if (strings.length < DIAGONAL_LIMITS.minStrings) {
    json.fail(
      'too-few-strings',
      `There ${strings.length === 1 ? 'is 1 string' : 'are no strings'}.`,
      `A diagonal pattern has at least ${DIAGONAL_LIMITS.minStrings}.`,
      at,
    );
  }
  return strings;
}
