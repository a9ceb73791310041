import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chart,
  instructionsHtml,
  instructionsText,
  planAlpha,
  verifyPlan,
} from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';

function page(chart: Chart): string {
  const plan = planAlpha(chart);
  return [...instructionsHtml(plan, chart, verifyPlan(plan, chart))].join('');
}

const hostile = '</title><script>alert(1)</script>" onload="x" \u202eevil\u0007 &amp; <b>';

const HOSTILE: Chart = {
  ...drawn('aab', 'bba'),
  name: hostile,
  colours: [
    { key: '<', hex: '#1f5f99', name: hostile },
    { key: '&', hex: '#f2efe6', name: hostile },
  ],
};

describe('the page of instructions', () => {
  it('lets no name become markup, or turn the text round', () => {
    const html = page(HOSTILE);
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<b>');
    for (const mark of ['\u202e', '\u0007']) expect(html).not.toContain(mark);
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(html).toContain('&amp;amp;');
  });

  it('opens no tag and no attribute for any name', () => {
    const plain = page({
      ...HOSTILE,
      name: 'x',
      colours: HOSTILE.colours.map((c) => ({ ...c, name: 'x' })),
    });
    const tags = (html: string) =>
      html.match(/<\/?[a-z][^>]*>/gi)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (name) => {
        fc.pre(
          name
            .replace(/[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '')
            .trim() !== '',
        );
        const colours = HOSTILE.colours.map((colour) => ({ ...colour, name }));
        expect(tags(page({ ...HOSTILE, name, colours }))).toEqual(tags(plain));
      }),
    );
  });

  it('fetches nothing and runs nothing', () => {
    const html = page(drawn('ab', 'ba'));
    expect(html).toContain('default-src &#39;none&#39;');
    expect(html).not.toMatch(
      /<script|javascript:|https?:\/\/(?!www\.w3\.org\/2000\/svg)|\son[a-z]+=/i,
    );
  });

  it('says all that the text says, row by row', () => {
    const chart = drawn('aabba', 'abbba', 'ccccc');
    const plan = planAlpha(chart);
    const words = page(chart)
      .replace(/<[^>]*>/g, ' ')
      .replace(/&#39;/g, "'")
      .replace(/\s+/g, ' ');
    for (const line of instructionsText(plan, chart)) {
      const text = line.replace(/^ *(\d+(\.\d+)?\.? |- )/, '').replace(/\s+/g, ' ');
      expect(words).toContain(text);
    }
  });

  it('labels each row of the chart with its number and its way in words', () => {
    const html = page(drawn('ab', 'ba', 'aa'));
    const labels = [...html.matchAll(/class="row">([^<]*)</g)].map((match) => match[1]);
    expect(labels).toEqual(['1, left to right', '2, right to left', '3, left to right']);
  });

  it('is refused above its limit, before anything is made', () => {
    const chart: Chart = {
      name: '',
      rows: 3001,
      columns: 100,
      colours: [{ key: 'a', hex: '#112233', name: '' }],
      cells: new Uint8Array(300_100),
    };
    const plan = planAlpha(chart);
    const verification = verifyPlan(plan, chart);
    const error = refusal(() => instructionsHtml(plan, chart, verification).next());
    expect(error.code).toBe('page-too-large');
  });
});
