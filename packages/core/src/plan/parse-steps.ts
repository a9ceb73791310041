import { CHART_LIMITS } from '../chart/chart.js';
import { unknownProperty } from '../document/header.js';
import type { JsonText } from '../document/json.js';
import { listed, quoted } from '../document/quote.js';
import { halvesOf, KNOT_KINDS } from '../model/knot.js';
import { PARK_ROUTES } from '../model/step.js';
import { Op, parkOp, type StepList, StepListBuilder, stringIndex } from '../model/steplist.js';
import { MAX_STRINGS, type ThreadString } from '../model/strings.js';
import type { PlanLimits } from './format.js';

const STEP_NAMES = [
  'add',
  'take-up',
  'half-hitch',
  'knot',
  'lay-through',
  'park',
  'end',
  'turn',
] as const;
type StepWord = (typeof STEP_NAMES)[number];

/** What each step says besides what it does, in the order it is printed. */
const OPERANDS: Readonly<Record<StepWord, readonly Operand[]>> = {
  add: ['string', 'slot'],
  'take-up': ['string', 'slot'],
  'half-hitch': ['way', 'tying', 'held'],
  knot: ['kind', 'tying', 'held'],
  'lay-through': ['string'],
  park: ['string', 'route'],
  end: ['string'],
  turn: [],
};

const ROW_KEYS = ['row', 'direction', 'steps'];
const ALL_OPERANDS = ['string', 'slot', 'way', 'kind', 'tying', 'held', 'route'] as const;
const WAYS = ['forward', 'backward'] as const;
const HALF = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/** What a step's properties hold, by place in the table of strings and in lists of words. */
interface Operands {
  string: number;
  slot: number;
  way: number;
  kind: number;
  tying: number;
  held: number;
  route: number;
}
type Operand = keyof Operands;

const ABSENT = -1;

/** Reads the rows of a plan into one list of steps. */
export class StepReader {
  private readonly places: ReadonlyMap<string, number>;
  private readonly steps: StepListBuilder;
  // One for all steps: a plan has millions.
  private readonly given: Operands = {
    string: ABSENT,
    slot: ABSENT,
    way: ABSENT,
    kind: ABSENT,
    tying: ABSENT,
    held: ABSENT,
    route: ABSENT,
  };
  private word: StepWord | undefined;
  private readonly readProperty = (key: string): void => this.property(key);

  constructor(
    private readonly json: JsonText,
    strings: readonly ThreadString[],
    private readonly limits: PlanLimits,
  ) {
    this.places = stringIndex(strings);
    this.steps = new StepListBuilder(strings);
  }

  rows(): StepList {
    const { json } = this;
    json.array((index) => {
      if (index === CHART_LIMITS.maxRows) {
        json.fail(
          'too-many-rows',
          `There are more than ${CHART_LIMITS.maxRows} rows.`,
          `A plan can have at most ${CHART_LIMITS.maxRows}.`,
        );
      }
      this.row();
    });
    return this.steps.finish();
  }

  private row(): void {
    const { json } = this;
    const at = json.mark;
    let hasSteps = false;
    json.object((key) => {
      if (key === 'row') json.integer(1, Number.MAX_SAFE_INTEGER);
      else if (key === 'direction') json.word(['right', 'left']);
      else if (key === 'steps') {
        hasSteps = true;
        json.array(() => this.step());
      } else unknownProperty(json, key, ROW_KEYS);
    });
    if (hasSteps) return;
    json.fail('property-missing', 'The row has no property "steps".', 'Write "steps": [].', at);
  }

  private step(): void {
    const { json, given } = this;
    const at = json.mark;
    for (const operand of ALL_OPERANDS) given[operand] = ABSENT;
    this.word = undefined;
    json.object(this.readProperty);
    const word = this.word as StepWord | undefined;
    if (word === undefined) {
      json.fail(
        'property-missing',
        'The step has no property "do".',
        `Write what to do: ${listed(STEP_NAMES.map(quoted), 'or')}.`,
        at,
      );
      return;
    }
    this.checkOperands(word, at);
    this.write(word);
    if (this.steps.length > this.limits.steps) {
      json.fail(
        'too-many-steps',
        `There are more than ${this.limits.steps} steps.`,
        'Plan the chart in parts.',
        at,
      );
    }
  }

  private property(key: string): void {
    const { json, given } = this;
    switch (key) {
      case 'do':
        this.word = json.word(STEP_NAMES);
        return;
      case 'slot':
        given.slot = json.integer(1, MAX_STRINGS) - 1;
        return;
      case 'way':
        given.way = WAYS.indexOf(json.word(WAYS));
        return;
      case 'kind':
        given.kind = KNOT_KINDS.indexOf(json.word(KNOT_KINDS));
        return;
      case 'route':
        given.route = PARK_ROUTES.indexOf(json.word(PARK_ROUTES));
        return;
      case 'string':
      case 'tying':
      case 'held':
        given[key] = this.place();
        return;
      default:
        unknownProperty(json, key, ['do', ...ALL_OPERANDS]);
    }
  }

  private place(): number {
    const { json } = this;
    const at = json.mark;
    const id = json.string('the id of a string in double quotes');
    const place = this.places.get(id);
    if (place !== undefined) return place;
    const known = [...this.places.keys()];
    const shown =
      known.length <= 8 ? known : [...known.slice(0, 4), '…', ...known.slice(known.length - 3)];
    return json.fail(
      'string-unknown',
      `The plan has no string ${quoted(id)}.`,
      known.length === 0 ? 'List it under "strings".' : `It has ${shown.join(', ')}.`,
      at,
    );
  }

  private checkOperands(word: StepWord, at: number): void {
    const wanted = OPERANDS[word];
    for (const operand of ALL_OPERANDS) {
      if ((this.given[operand] !== ABSENT) === wanted.includes(operand)) continue;
      const asked = wanted.length === 0 ? 'nothing besides "do"' : listed(wanted.map(quoted));
      const has = this.given[operand] === ABSENT ? 'has no' : 'has a';
      this.json.fail(
        this.given[operand] === ABSENT ? 'property-missing' : 'property-unknown',
        `The step ${quoted(word)} ${has} property ${quoted(operand)}.`,
        `It asks for ${asked}.`,
        at,
      );
    }
  }

  private write(word: StepWord): void {
    const { steps, given } = this;
    switch (word) {
      case 'add':
        return steps.code(Op.add, given.string, given.slot);
      case 'take-up':
        return steps.code(Op.takeUp, given.string, given.slot);
      case 'half-hitch':
        return steps.code(HALF[WAYS[given.way] as 'forward'], given.tying, given.held);
      case 'knot':
        for (const way of halvesOf(KNOT_KINDS[given.kind] as 'forward')) {
          steps.code(HALF[way], given.tying, given.held);
        }
        return;
      case 'lay-through':
        return steps.code(Op.layThrough, given.string);
      case 'park':
        return steps.code(parkOp(PARK_ROUTES[given.route] as 'down'), given.string);
      case 'end':
        return steps.code(Op.end, given.string);
      case 'turn':
        return steps.code(Op.turn);
    }
  }
}
