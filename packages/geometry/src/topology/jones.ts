import { type DiagramCrossing, type LinkDiagram, writhe } from './diagram.js';

/** A Laurent polynomial with whole coefficients: exponent to coefficient, no zeros. */
export type Laurent = ReadonlyMap<number, number>;

type Matching = ReadonlyMap<number, number>;

/**
 * The Jones polynomial of an oriented link, from the Kauffman bracket of its diagram. The map's
 * keys are twice the exponents of t, as links with an even number of components have half ones.
 * Normalised to 1 for the unknot.
 *
 * (V. F. R. Jones 1985; L. H. Kauffman, "State models and the Jones polynomial", Topology 26, 1987.)
 */
export function jonesPolynomial(diagram: LinkDiagram): Laurent {
  const w = writhe(diagram);
  const out = new Map<number, number>();
  for (const [e, c] of bracket(diagram)) {
    // (-A^3)^(-w), and t = A^-4.
    const exponent = e - 3 * w;
    out.set(-exponent / 2, w % 2 === 0 ? c : -c);
  }
  return out;
}

/** The Kauffman bracket in A, with the unknot's circle as 1. */
export function bracket(diagram: LinkDiagram): Laurent {
  let states = new Map<string, { matching: Matching; value: Map<number, number> }>([
    ['', { matching: new Map(), value: new Map([[0, 1]]) }],
  ]);
  for (const crossing of byNeighbourhood(diagram.crossings)) {
    const next: typeof states = new Map();
    for (const { matching, value } of states.values()) {
      const [i, j, k, l] = aroundOf(crossing);
      smooth(next, matching, value, 1, [
        [i, j],
        [k, l],
      ]);
      smooth(next, matching, value, -1, [
        [i, l],
        [j, k],
      ]);
    }
    states = next;
  }
  let value: Map<number, number> = states.get('')?.value ?? new Map();
  for (let c = 0; c < diagram.freeCircles; c++) value = circled(value);
  return dividedByCircle(value);
}

/** Edges round a crossing, counter-clockwise from where the lower strand comes in. */
function aroundOf(c: DiagramCrossing): readonly [number, number, number, number] {
  return c.sign > 0
    ? [c.underIn, c.overOut, c.underOut, c.overIn]
    : [c.underIn, c.overIn, c.underOut, c.overOut];
}

/** Crossings in an order that keeps few edges open. */
function byNeighbourhood(crossings: readonly DiagramCrossing[]): DiagramCrossing[] {
  const left = [...crossings];
  const open = new Set<number>();
  const order: DiagramCrossing[] = [];
  while (left.length > 0) {
    let best = 0;
    let most = -1;
    left.forEach((c, i) => {
      const shared = aroundOf(c).filter((edge) => open.has(edge)).length;
      if (shared > most) {
        most = shared;
        best = i;
      }
    });
    const [chosen] = left.splice(best, 1);
    for (const edge of aroundOf(chosen!)) {
      if (!open.delete(edge)) open.add(edge);
    }
    order.push(chosen!);
  }
  return order;
}

function smooth(
  into: Map<string, { matching: Matching; value: Map<number, number> }>,
  from: Matching,
  value: ReadonlyMap<number, number>,
  power: 1 | -1,
  arcs: readonly (readonly [number, number])[],
): void {
  const matching = new Map(from);
  let result = new Map<number, number>();
  for (const [e, c] of value) result.set(e + power, c);
  for (const [a, b] of arcs) if (closes(matching, a, b)) result = circled(result);
  const key = [...matching]
    .filter(([a, b]) => a < b)
    .sort((p, q) => p[0] - q[0])
    .join(';');
  const known = into.get(key);
  if (!known) into.set(key, { matching, value: result });
  else for (const [e, c] of result) addTo(known.value, e, c);
}

/** Joins two edge ends by an arc; true when that closes a circle. */
function closes(matching: Map<number, number>, a: number, b: number): boolean {
  if (a === b) return true;
  const far = (edge: number): number => {
    const partner = matching.get(edge);
    if (partner === undefined) return edge;
    matching.delete(edge);
    matching.delete(partner);
    return partner;
  };
  const x = far(a);
  if (x === b) return true;
  const y = far(b);
  matching.set(x, y);
  matching.set(y, x);
  return false;
}

function addTo(poly: Map<number, number>, exponent: number, coefficient: number): void {
  const sum = (poly.get(exponent) ?? 0) + coefficient;
  if (sum === 0) poly.delete(exponent);
  else poly.set(exponent, sum);
}

function circled(poly: ReadonlyMap<number, number>): Map<number, number> {
  const out = new Map<number, number>();
  for (const [e, c] of poly) {
    addTo(out, e + 2, -c);
    addTo(out, e - 2, -c);
  }
  return out;
}

/** Exact division by the value of a circle, -A^2 - A^-2. */
function dividedByCircle(poly: ReadonlyMap<number, number>): Map<number, number> {
  const rest = new Map(poly);
  const out = new Map<number, number>();
  while (rest.size > 0) {
    const top = Math.max(...rest.keys());
    const c = -rest.get(top)!;
    out.set(top - 2, c);
    addTo(rest, top, c);
    addTo(rest, top - 4, c);
  }
  return out;
}
