import {
  type Chart,
  InputError,
  printChartDocument,
  printDiagonalDocument,
  readTextChart,
} from '@halfhitch/core';
import fc from 'fast-check';
import { deflate } from 'pako';
import { describe, expect, test } from 'vitest';
import { LINK_LIMITS, linkFragment, readLink } from '../../src/keep/pattern-link.js';
import { anyPattern } from '../diagonal/projects.js';
import { aChart } from './charts.js';

const HERON = readTextChart(
  'name Heron\nedge wrapped\nstart right\nb #1f6fb2 lake blue\nw #f4f1e8 chalk\n\nbbwwbb\nbwwwwb\n',
).chart;

const packed = (text: string): string =>
  Buffer.from(deflate(new TextEncoder().encode(text))).toString('base64url');

function refusal(hash: string): InputError {
  try {
    readLink(hash);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('It was not refused.');
}

function chartIn(hash: string): Chart {
  const read = readLink(hash);
  if (read.kind !== 'alpha') throw new Error('It is no chart.');
  return read.chart;
}

function readOrNull(hash: string): string | null {
  try {
    return printChartDocument(chartIn(hash));
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

describe('links with a pattern', () => {
  test('carry the chart with its edges, start, names and knots', () => {
    fc.assert(
      fc.property(aChart(), (chart) => {
        const hash = `#${linkFragment(printChartDocument(chart))}`;
        expect(hash).toMatch(/^#pattern=1\.[A-Za-z0-9_-]+$/);
        expect(printChartDocument(chartIn(hash))).toBe(printChartDocument(chart));
      }),
    );
  });

  test('carry diagonal patterns too', () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const read = readLink(`#${linkFragment(printDiagonalDocument(pattern))}`);
        expect(read).toEqual({ kind: 'diagonal', pattern, notices: [] });
      }),
    );
  });

  test('of a boat’s name are short enough for any messenger', () => {
    expect(linkFragment(printChartDocument(HERON)).length).toBeLessThan(300);
  });

  test('are read with their marks written as numbers too', () => {
    const [mark, data] = linkFragment(printChartDocument(HERON)).split('=') as [string, string];
    expect(chartIn(`#${mark}=${data.replace('.', '%2E')}`).name).toBe('Heron');
  });

  test('too long to pass on are not made, and one that is made is read', () => {
    let state = 7;
    const noise: Chart = {
      ...HERON,
      colours: [...'abcdefghijklmnopqrstuvwxyz'].map((key, i) => ({
        key,
        hex: `#0000${(16 + i).toString(16)}`,
        name: '',
      })),
      rows: 300,
      columns: 100,
      cells: Uint8Array.from({ length: 30_000 }, () => {
        state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
        return (state >>> 16) % 26;
      }),
    };
    expect(() => linkFragment(printChartDocument(noise))).toThrow(
      /the most is 16,000.*Export the project as a file/,
    );
    const plain: Chart = { ...noise, cells: new Uint8Array(30_000) };
    expect(chartIn(`#${linkFragment(printChartDocument(plain))}`).rows).toBe(300);
    const vast: Chart = { ...HERON, rows: 10_000, columns: 300, cells: new Uint8Array(3_000_000) };
    expect(() => linkFragment(printChartDocument(vast))).toThrow(InputError);
  });

  test('of a later version are refused with advice', () => {
    expect(refusal('#pattern=2.abc').message).toMatch(/later version.*Load this page anew/);
    const later = `#pattern=1.${packed('{"format":"halfhitch-chart","version":9}')}`;
    expect(refusal(later).code).toBe('version-newer');
  });

  test('that would unpack to more than a pattern may have are refused while they unpack', () => {
    expect(refusal(`#pattern=1.${'A'.repeat(LINK_LIMITS.characters)}`).code).toBe('link-too-long');
    const smaller = deflate(new Uint8Array(8 * 1024 * 1024), { level: 9 });
    const small = `#pattern=1.${Buffer.from(smaller).toString('base64url')}`;
    expect(small.length).toBeLessThan(LINK_LIMITS.characters);
    expect(refusal(small).code).toBe('link-too-large');
  });

  test('cut short, changed or made up are told of as such, whatever they hold', () => {
    const whole = `#${linkFragment(printChartDocument(HERON))}`;
    for (let end = '#pattern='.length; end < whole.length; end++) {
      expect(refusal(whole.slice(0, end)).code).toBe('link-damaged');
    }
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    fc.assert(
      fc.property(
        fc.integer({ min: '#pattern=1.'.length, max: whole.length - 3 }),
        fc.constantFrom(...letters),
        (at, letter) => {
          fc.pre(whole[at] !== letter);
          // A letter may hold bits that nothing is read from; then it is the same chart.
          const other = readOrNull(whole.slice(0, at) + letter + whole.slice(at + 1));
          if (other !== null) expect(other).toBe(printChartDocument(HERON));
        },
      ),
    );
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.base64String()), (text) => {
        expect(() => readLink(`#pattern=${text}`)).toThrow(InputError);
        expect(() => readLink(`#pattern=1.${text}`)).toThrow(InputError);
      }),
    );
    for (const text of ['', 'x', '<script>alert(1)</script>', '{"rows":["b"]}', '[[[[[[']) {
      expect(refusal(`#pattern=1.${packed(text)}`).message).toMatch(/^The link cannot be opened\./);
    }
  });
});
