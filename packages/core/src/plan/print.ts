import { halvesOf, KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { Op, routeOfOp, type StepList } from '../model/steplist.js';
import { PLAN_FORMAT, PLAN_VERSION } from './format.js';
import { directionOf, type Plan } from './plan.js';

/**
 * Prints a plan as a document, in pieces: the head, then a row at a time, one step a line. Joined,
 * a long plan may be more than one string can hold, so write the pieces as they come.
 */
export function* printPlan(plan: Plan): Generator<string> {
  yield head(plan);
  const steps = new StepPrinter(plan);
  let row = 0;
  let first = 0;
  do {
    const end = endOfRow(plan.steps, first);
    const direction = directionOf(plan.start, row);
    const lines = steps.lines(first, end);
    const open = `    {"row": ${row + 1}, "direction": "${direction}", "steps": [`;
    const body = lines.length === 0 ? '' : `\n${lines.join(',\n')}\n    `;
    yield `${row === 0 ? '' : ',\n'}${open}${body}]}`;
    first = end;
    row++;
  } while (first < plan.steps.length);
  yield '\n  ]\n}\n';
}

function head(plan: Plan): string {
  const strings = plan.strings.map(
    ({ id, role, colour, name }) =>
      `    {"id": ${quote(id)}, "role": "${role}", "colour": "${colour}", "name": ${quote(name)}}`,
  );
  return `{
  "format": "${PLAN_FORMAT}",
  "version": ${PLAN_VERSION},
  "name": ${quote(plan.name)},
  "edge": "${plan.edge}",
  "start": "${plan.start}",
  "chart": {"rows": ${plan.rows}, "columns": ${plan.columns}},
  "strings": [
${strings.join(',\n')}
  ],
  "rows": [
`;
}

/**
 * A row ends before the next turn, and before the leads that go down for that turn: the row that
 * follows asks for their going.
 */
function endOfRow({ op, length }: StepList, first: number): number {
  let i = first;
  while (i < length && op[i] === Op.parkDown) i++;
  if (op[i] === Op.turn) i++;
  while (i < length && op[i] !== Op.turn) i++;
  if (i === length) return length;
  while (i > first + 1 && op[i - 1] === Op.parkDown) i--;
  return i;
}

/** Prints steps, one a line; two halves of one knot stand together. */
export class StepPrinter {
  private readonly steps: StepList;
  private readonly ids: readonly string[];

  constructor(plan: Pick<Plan, 'steps' | 'strings'>) {
    this.steps = plan.steps;
    this.ids = plan.strings.map(({ id }) => quote(id));
  }

  lines(first: number, end: number): string[] {
    const lines: string[] = [];
    for (let i = first; i < end; i++) {
      const kind = this.knotAt(i);
      lines.push(kind === undefined ? this.line(i) : this.knot(i, kind));
      if (kind !== undefined) i++;
    }
    return lines;
  }

  /** The knot that a step and the next make, when they are its halves and nothing is between. */
  private knotAt(i: number): KnotKind | undefined {
    const { op, a, b } = this.steps;
    if (a[i] !== a[i + 1] || b[i] !== b[i + 1]) return undefined;
    return KNOT_KINDS.find((kind) => {
      const [first, second] = halvesOf(kind);
      return op[i] === HALF[first] && op[i + 1] === HALF[second];
    });
  }

  private knot(i: number, kind: KnotKind): string {
    return `      {"do": "knot", "kind": "${kind}", ${this.pair(i)}}`;
  }

  private pair(i: number): string {
    const tying = this.ids[this.steps.a[i] as number];
    return `"tying": ${tying}, "held": ${this.ids[this.steps.b[i] as number]}`;
  }

  private line(i: number): string {
    const op = this.steps.op[i] as Op;
    const string = `"string": ${this.ids[this.steps.a[i] as number]}`;
    const slot = `"slot": ${(this.steps.b[i] as number) + 1}`;
    switch (op) {
      case Op.halfForward:
        return `      {"do": "half-hitch", "way": "forward", ${this.pair(i)}}`;
      case Op.halfBackward:
        return `      {"do": "half-hitch", "way": "backward", ${this.pair(i)}}`;
      case Op.layThrough:
        return `      {"do": "lay-through", ${string}}`;
      case Op.parkThrough:
      case Op.parkBehind:
      case Op.parkDown:
        return `      {"do": "park", ${string}, "route": "${routeOfOp(op)}"}`;
      case Op.takeUp:
        return `      {"do": "take-up", ${string}, ${slot}}`;
      case Op.add:
        return `      {"do": "add", ${string}, ${slot}}`;
      case Op.end:
        return `      {"do": "end", ${string}}`;
      case Op.turn:
        return '      {"do": "turn"}';
    }
  }
}

const HALF = { forward: Op.halfForward, backward: Op.halfBackward } as const;

function quote(text: string): string {
  return JSON.stringify(text);
}
