import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  changesPlaces,
  chevrons,
  countKinds,
  type DiagonalPattern,
  DiagonalPlanReader,
  diagonalInstructionsHtml,
  diagonalInstructionsText,
  diagonalStepInWords,
  diagonalStripes,
  instructDiagonalRow,
  KNOT_KINDS,
  type KnotKind,
  kindsInWords,
  knotAt,
  knotsInRow,
  planDiagonal,
  simulateDiagonal,
} from '../../src/index.js';

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];

const VERDICT = { ok: true, knots: 1, halfHitches: 2, findings: [] };

function textOf(pattern: DiagonalPattern): string {
  return [...diagonalInstructionsText(planDiagonal(pattern), pattern)].join('\n');
}

/**
 * A maker who has only the words: follows the lines of the rows, and answers who tied each knot
 * and how the strings hang after each row.
 */
function follow(text: string, strings: number): { tied: string[]; orders: string[][] } {
  const tied: string[] = [];
  const orders: string[][] = [];
  const kindIn = (line: string): KnotKind =>
    KNOT_KINDS.find((kind) => new RegExp(`(?:: a|:) ${kind} knot`).test(line)) as KnotKind;
  let front = Array.from({ length: strings }, (_, at) => `S${at + 1}`);
  let kind: KnotKind = 'forward';
  let row = 0;
  for (const line of text.split('\n')) {
    const heading = /^Row (\d+),/.exec(line);
    if (heading) row = Number(heading[1]);
    const knot = /Slots (\d+)-(\d+):.*?(S\d+) \([^)]*\).* ties .*onto (S\d+)/.exec(line);
    const run = /^ {2}\d+\. Slots .*: ([a-z-]+) knots \(\d+\)\. In each/.exec(line);
    if (run) kind = run[1] as KnotKind;
    else if (knot) {
      if (/^ {2}\d+\. /.test(line)) kind = kindIn(line);
      const [, left, right, tying, held] = knot as unknown as [
        string,
        string,
        string,
        string,
        string,
      ];
      const slot = Number(left) - 1;
      expect(Number(right)).toBe(slot + 2);
      const pair = [front[slot], front[slot + 1]];
      const leftTies = kind === 'forward' || kind === 'forward-backward';
      expect([tying, held]).toEqual(leftTies ? pair : [pair[1], pair[0]]);
      if (changesPlaces(kind)) front.splice(slot, 2, pair[1] as string, pair[0] as string);
      tied.push(`${row} ${slot} ${kind} ${tying}`);
    }
    const order = /^ {2}Then they hang, from the left: (.*)\.$/.exec(line);
    if (order) {
      const told = [...(order[1] as string).matchAll(/S\d+/g)].map(([id]) => id);
      expect(told).toEqual(front);
      front = told;
    }
    if (order || /no knots: all strings hang on/.test(line)) orders.push([...front]);
  }
  return { tied, orders };
}

describe('the instructions of a diagonal piece', () => {
  it('let a maker who has only the words knot the pattern', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const reading = simulateDiagonal(pattern);
        const { tied, orders } = follow(textOf(pattern), pattern.strings);
        const expected: string[] = [];
        for (let row = 0; row < pattern.rows; row++) {
          for (let place = 0; place < knotsInRow(pattern, row); place++) {
            const kind = knotAt(pattern, row, place);
            if (kind === null) continue;
            const slot = ((pattern.first + row) % 2) + 2 * place;
            const at = row * Math.floor(pattern.strings / 2) + place;
            expected.push(`${row + 1} ${slot} ${kind} S${(reading.tying[at] as number) + 1}`);
          }
          const { strings } = pattern;
          const after = reading.order.slice((row + 1) * strings, (row + 2) * strings);
          expect(orders[row]).toEqual([...after].map((string) => `S${string + 1}`));
        }
        expect(tied).toEqual(expected);
      }),
      { numRuns: 40 },
    );
  });

  it('cover every place once, and the steps of every knot in order', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 3 }), (pattern) => {
        const plan = planDiagonal(pattern);
        for (const row of new DiagonalPlanReader(plan)) {
          const { parts, sentences } = instructDiagonalRow(row, plan);
          expect(sentences).not.toMatch(/undefined|NaN|\(0\)/);
          const steps = parts.filter(({ kind }) => kind === 'run' || kind === 'knot');
          let next = row.knots[0]?.steps.first;
          for (const part of steps) {
            expect(part.steps.first).toBe(next);
            next = part.steps.end;
          }
          expect(next).toBe(row.knots.at(-1)?.steps.end);
          if (row.knots.length === 0) continue;
          const places = parts.flatMap((part) =>
            part.places === null
              ? []
              : Array.from(
                  { length: part.places.last - part.places.first + 1 },
                  (_, i) => (part.places?.first ?? 0) + i,
                ),
          );
          expect(places).toEqual([...Array(knotsInRow(pattern, row.row)).keys()]);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('tell a run of equal knots as a maker would, and who idles', () => {
    const text = textOf(diagonalStripes({ strings: 6, colours: COLOURS, rows: 2 }));
    expect(text).toContain('Row 1, slots 1-2 to 5-6');
    expect(text).toContain('Every string has a neighbour.');
    expect(text).toContain(
      'Slots 1-2 to 5-6: forward knots (3). In each, the left string ties two',
    );
    expect(text).toMatch(
      /Leave S\d \([a-z ]+\) at the left edge and S\d \([a-z ]+\) at the right edge hanging: they have no neighbour in this row\./,
    );
    expect(text).toMatch(
      /- Slots 1-2: S1 \([a-z ]+\) ties onto S2 \([a-z ]+\), and [a-z ]+ shows\./,
    );
  });

  it('warn of the hands, of cords, blades and flames', () => {
    const text = textOf(chevrons({ strings: 8, colours: COLOURS, rows: 4 }));
    for (const word of ['hurts', 'small children', 'blades', 'flames']) {
      expect(text).toContain(word);
    }
  });

  it('say every step in words', () => {
    const plan = planDiagonal(chevrons({ strings: 6, colours: COLOURS, rows: 3 }));
    for (let step = 0; step < plan.steps.length; step++) {
      expect(diagonalStepInWords(plan, step)).toMatch(/^(?:Lay S\d \(|The row is done).*\.$/);
    }
  });

  it('stop with the reason where the steps cannot be done', () => {
    const pattern = chevrons({ strings: 6, colours: COLOURS, rows: 3 });
    const plan = planDiagonal(pattern);
    const lattice = { ...plan.lattice, rows: 9 };
    const text = [...diagonalInstructionsText({ ...plan, lattice }, pattern)].join('\n');
    expect(text).toContain('The instructions stop here. ');
    expect(text).toContain('end before row 4');
  });
});

describe('a pattern in short', () => {
  it('counts kinds, bare places and changes of the kind', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const { kinds, bare, changes } = countKinds(pattern);
        let places = 0;
        let turns = 0;
        for (let row = 0; row < pattern.rows; row++) {
          const told = Array.from({ length: knotsInRow(pattern, row) }, (_, place) =>
            knotAt(pattern, row, place),
          );
          places += told.length;
          const tied = told.filter((kind) => kind !== null);
          turns += tied.filter((kind, at) => at > 0 && kind !== tied[at - 1]).length;
        }
        expect(kinds.reduce((sum, one) => sum + one, 0) + bare).toBe(places);
        expect(changes).toBe(turns);
        expect(kindsInWords(pattern)).toMatch(/^[N\d].*\.$/);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the page of a diagonal piece', () => {
  const hostile = '</title><script>alert(1)</script>" onload="x" \u202eevil';

  it('needs nothing else, and lets no name become markup', () => {
    const piece = chevrons({ strings: 8, colours: COLOURS, rows: 4 });
    const pattern = {
      ...piece,
      name: hostile,
      colours: piece.colours.map((colour) => ({ ...colour, key: '<', name: hostile })),
    };
    const html = [...diagonalInstructionsHtml(planDiagonal(pattern), pattern, VERDICT)].join('');
    expect(html).toMatch(/^<!DOCTYPE html>/);
    expect(html.endsWith('</html>\n')).toBe(true);
    expect(html).not.toMatch(/<script|\u202e|(?:src|href)="(?!#)/);
    expect(html.match(/<section id="row-/g)).toHaveLength(4);
    expect(html).toContain('<h2>The finished work</h2>');
  });
});
