import type { Chart, Plan, Step } from '../../src/index.js';

/**
 * A second machine, written apart from the first with plain lists and no repair, to judge the
 * verifier by: it says whether the steps knot the drawing, with every row in order and every
 * colour change by the flat technique, and nothing more.
 */
export function knotsOutAsDrawn(plan: Plan, chart: Chart): boolean {
  const colourOf = new Map(plan.strings.map((string) => [string.id, string.colour]));
  const bases = [...plan.hung];
  const front = [...plan.hung];
  const behind = new Map<string, string>();
  const cut = new Set<string>();
  const known = new Set(plan.strings.map((string) => string.id));
  const picture: string[][] = [[]];
  let open: { tying: string; held: string; way: string; laid: string } | null = null;
  let locked = '';
  let before = '';
  /** The old lead of a hand-over and how it has to leave. */
  let leaving: { lead: string; how: string } | null = null;

  const row = (): string[] => picture[picture.length - 1] as string[];
  const rightwards = (): boolean => (picture.length % 2 === 1) === (plan.start === 'left');
  const wantedColumn = (): number =>
    rightwards() ? row().length : plan.columns - 1 - row().length;
  const settled = (): boolean => {
    if (leaving === null) return true;
    const fine = cut.has(leaving.lead) || behind.get(leaving.lead) === leaving.how;
    leaving = null;
    return fine;
  };

  const wantedKind = (column: number): string => {
    const inner = rightwards() ? 'forward forward' : 'backward backward';
    // Without a default: an edge technique that is not stated here does not compile.
    switch (plan.edge) {
      case 'wrapped':
        return inner;
      case 'straight':
        if (plan.columns === 1) {
          return plan.start === 'left' ? 'backward forward' : 'forward backward';
        }
        if (column === 0) return 'backward forward';
        return column === plan.columns - 1 ? 'forward backward' : inner;
    }
  };

  const doStep = (step: Step): boolean => {
    switch (step.do) {
      case 'turn':
        if (open !== null || row().length !== plan.columns || !settled()) return false;
        picture.push([]);
        return true;
      case 'add':
      case 'takeUp': {
        const { string, slot } = step;
        if (open !== null || !settled() || !known.has(string) || cut.has(string)) return false;
        if (front.includes(string) || slot > front.length || slot < 0) return false;
        if ((step.do === 'takeUp') !== behind.has(string)) return false;
        behind.delete(string);
        front.splice(slot, 0, string);
        return front.length <= plan.columns + 2;
      }
      case 'end': {
        const at = front.indexOf(step.string);
        if (cut.has(step.string) || bases.includes(step.string)) return false;
        if (at < 0 && !behind.has(step.string)) return false;
        if (open !== null && [open.tying, open.laid].includes(step.string)) return false;
        if (at >= 0) front.splice(at, 1);
        if (leaving?.lead === step.string && !settled()) return false;
        behind.delete(step.string);
        cut.add(step.string);
        return true;
      }
      case 'layThrough': {
        if (open === null || open.laid !== '') return false;
        const apart = front.indexOf(step.string) - front.indexOf(open.tying);
        if (!front.includes(step.string) || Math.abs(apart) !== 1) return false;
        if (step.string === open.held) return false;
        open.laid = step.string;
        return true;
      }
      case 'park': {
        const at = front.indexOf(step.string);
        if (at < 0 || bases.includes(step.string)) return false;
        if (open !== null && [open.tying, open.laid].includes(step.string)) return false;
        if ((step.route === 'through') !== (locked === step.string)) return false;
        front.splice(at, 1);
        behind.set(step.string, step.route);
        return true;
      }
      case 'halfHitch': {
        const { tying, held, way } = step;
        if (open === null) {
          if (!settled()) return false;
          const left = front[front.indexOf(way === 'forward' ? tying : held) as number];
          const right = front[(front.indexOf(left ?? '') as number) + 1];
          if (!front.includes(tying) || !front.includes(held) || bases.includes(tying))
            return false;
          if (left !== (way === 'forward' ? tying : held)) return false;
          if (right !== (way === 'forward' ? held : tying)) return false;
          if (picture.length > chart.rows || row().length >= plan.columns) return false;
          if (bases.indexOf(held) !== wantedColumn()) return false;
          // Beside the lead that ties only the one that hands over to it may still hang in front.
          const others = front.filter((id) => !bases.includes(id) && id !== tying);
          if (others.some((id) => id !== before)) return false;
          locked = '';
          open = { tying, held, way, laid: '' };
          return true;
        }
        if (open.tying !== tying || open.held !== held) return false;
        if (`${open.way} ${way}` !== wantedKind(bases.indexOf(held))) return false;
        if (open.way === way) {
          const one = front.indexOf(tying);
          const other = front.indexOf(held);
          front[one] = held;
          front[other] = tying;
        }
        locked = open.laid;
        open = null;
        if (before !== '' && before !== tying) {
          const place = row().length;
          const how = place === 0 ? 'down' : place === plan.columns - 1 ? 'behind' : 'through';
          leaving = { lead: before, how };
        }
        before = tying;
        row().push(colourOf.get(tying) as string);
        return true;
      }
    }
  };

  for (const step of plan.steps) if (!doStep(step)) return false;
  if (open !== null || !settled() || front.length > plan.columns + 1) return false;
  if ((picture[picture.length - 1] as string[]).length === 0) picture.pop();
  if (picture.length !== chart.rows) return false;
  return picture.every((colours, r) => {
    const rightward = (r % 2 === 0) === (plan.start === 'left');
    const inOrder = rightward ? colours : [...colours].reverse();
    return (
      colours.length === chart.columns &&
      inOrder.every(
        (hex, c) => hex === chart.colours[chart.cells[r * chart.columns + c] as number]?.hex,
      )
    );
  });
}
