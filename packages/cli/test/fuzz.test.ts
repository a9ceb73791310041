import { writeFileSync } from 'node:fs';
import { printChartDocument } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pngOf, textOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, type Outcome, useTool } from './support/halfhitch.js';

const { path } = useTool();
const band = waveBand(5, 6, 3);
const encoder = new TextEncoder();

const whole: readonly Uint8Array[] = [
  pngOf(band),
  encoder.encode(textOf(band)),
  encoder.encode(printChartDocument(band)),
];

/** Files of no kind, and files of each kind cut short or with bytes changed. */
const anyFile: fc.Arbitrary<Uint8Array> = fc.oneof(
  fc.uint8Array({ maxLength: 400 }),
  fc.string({ unit: 'binary', maxLength: 200 }).map((text) => encoder.encode(text)),
  fc
    .record({
      bytes: fc.constantFrom(...whole),
      cut: fc.double({ min: 0, max: 1, noNaN: true }),
      changes: fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 5 }),
    })
    .map(({ bytes, cut, changes }) => {
      const damaged = bytes.slice(0, Math.ceil(bytes.length * cut));
      for (const [at, value] of changes) {
        if (damaged.length > 0) damaged[at % damaged.length] = value;
      }
      return damaged;
    }),
);

function isAnswer({ code, signal, stdout, stderr }: Outcome): boolean {
  return signal === null && (code === 0 || code === 1) && stdout !== '' && stderr === '';
}

// Each run starts a process, so there are few of them; core's own tests have many more.
const RUNS = { numRuns: 25 };

describe('damaged and random files', () => {
  it('are checked, or refused in one line', async () => {
    await fc.assert(
      fc.asyncProperty(anyFile, async (bytes) => {
        writeFileSync(path('fuzz'), bytes);
        const outcome = await halfhitch(['check', path('fuzz')]);
        expect(isAnswer(outcome) || isPlainRefusal(outcome), JSON.stringify(outcome)).toBe(true);
      }),
      RUNS,
    );
  });

  it('are refused as plans in one line', async () => {
    writeFileSync(path('band.png'), whole[0] as Uint8Array);
    await fc.assert(
      fc.asyncProperty(anyFile, async (bytes) => {
        const outcome = await halfhitch(['verify', '-', '--chart', path('band.png')], {
          input: bytes,
        });
        expect(isPlainRefusal(outcome), JSON.stringify(outcome)).toBe(true);
      }),
      RUNS,
    );
  });
});
