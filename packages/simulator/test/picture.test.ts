import { chevrons, KNOT_KINDS, planAlpha, readTextChart } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import {
  knotPicture,
  knotPictureElement,
  MOST_COLUMNS_PICTURED,
  PictureError,
  patternPicture,
  rowPicture,
} from '../src/picture.js';

const strokes = (markup: string): string[] =>
  [...markup.matchAll(/stroke="([^"]+)"/g)].map((match) => match[1] as string);

describe('the small picture of a knot', () => {
  it('is made where there is no DOM', () => {
    expect(typeof document).toBe('undefined');
    for (const kind of KNOT_KINDS) {
      const markup = knotPicture({ kind, tyingColour: '#123456', heldColour: '#fedcba' });
      expect(markup).toMatch(/^<svg [^>]*viewBox="0 0 240 280"/);
      expect(new Set(strokes(markup))).toContain('#123456');
      expect(new Set(strokes(markup))).toContain('#fedcba');
    }
  });

  it('differs by kind, moment and side, and is the same for the same', () => {
    const all = KNOT_KINDS.flatMap((kind) =>
      [0, 0.5, 1, 2].flatMap((moment) =>
        (['front', 'back'] as const).map((view) =>
          knotPicture({ kind, moment, view, decorative: true }),
        ),
      ),
    );
    // Before anything is tied, forward and forward-backward look alike, as do their mirrors.
    expect(new Set(all).size).toBeGreaterThanOrEqual(all.length - 12);
    expect(knotPicture({ moment: 1 })).toBe(knotPicture({ moment: 1 }));
  });

  it('draws the thread that lies over last', () => {
    const colours = { tyingColour: '#111111', heldColour: '#eeeeee', decorative: true };
    // The bar of the first half lies over the held string: from the front it is drawn after it.
    const last = (view: 'front' | 'back') =>
      strokes(knotPicture({ moment: 0.25, view, ...colours }))
        .filter((c) => c === '#111111' || c === '#eeeeee')
        .at(-1);
    expect(last('front')).toBe('#111111');
    expect(last('back')).toBe('#eeeeee');
  });

  it('says what it shows in English or German', () => {
    expect(knotPicture({ kind: 'backward' })).toContain(
      '<title>A finished backward knot, seen from the front</title>',
    );
    const german = knotPicture({ kind: 'backward', moment: 0.2, lang: 'de-CH' });
    expect(german).toContain('lang="de"');
    expect(german).toContain('von rechts nach links');
    expect(knotPicture({ kind: 'backward', mirror: true })).toContain('A finished forward knot');
    expect(knotPicture({ decorative: true })).not.toContain('<title>');
  });

  it('escapes words and takes no colour that is none', () => {
    const markup = knotPictureElement({
      label: '"><script>alert(1)</script>',
      tyingColour: 'red" onload="alert(1)',
    });
    expect(markup).not.toContain('<script');
    expect(markup).not.toContain('" onload');
    expect(strokes(markup)).toContain('#8a8f94');
    expect(markup).toMatch(
      /^<halfhitch-picture kind="forward"[^>]*><svg .*<\/svg><\/halfhitch-picture>$/,
    );
  });

  it('says clearly what is wrong', () => {
    expect(() => knotPicture({ kind: 'granny' as never })).toThrow(PictureError);
    expect(() => knotPicture({ moment: Number.NaN })).toThrow(/0 to 2/);
    expect(() => knotPicture({ width: 5 })).toThrow(/width is 5/);
  });
});

describe('the picture of diagonal work', () => {
  const colours = [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'c', hex: '#f4f1e8', name: 'chalk' },
  ];
  const pattern = chevrons({ strings: 6, rows: 8, colours });

  it('differs by side, mirror and how far it is knotted, and is the same for the same', () => {
    const all = [
      patternPicture(pattern),
      patternPicture(pattern, { view: 'back' }),
      patternPicture(pattern, { mirror: true }),
      patternPicture(pattern, { knots: 5 }),
      patternPicture(pattern, { knots: 0 }),
    ];
    expect(new Set(all).size).toBe(all.length);
    expect(patternPicture(pattern)).toBe(all[0]);
    expect(new Set(strokes(all[0] as string))).toEqual(new Set(['#1f6fb2', '#f4f1e8', '#26384a']));
  });

  it('says what it shows, or nothing where it is decorative', () => {
    expect(patternPicture(pattern, { lang: 'de' })).toContain(
      '<desc>Das Stück ist fertig: 8 Reihen mit 6 Fäden.</desc>',
    );
    expect(patternPicture(pattern, { label: 'Pennant <one>' })).toContain(
      '<title>Pennant &lt;one&gt;</title>',
    );
    expect(patternPicture(pattern, { decorative: true })).not.toContain('<title>');
  });

  it('refuses a pattern that is too large, in words', () => {
    const large = chevrons({ strings: 20, rows: 400, colours });
    expect(() => patternPicture(large)).toThrow(PictureError);
    expect(() => patternPicture(large)).toThrow(/up to 600/);
  });
});

describe('the small picture of a row', () => {
  const plan = planAlpha(
    readTextChart('b #1f6fb2 lake blue\no #e8742c buoy orange\n\nbboo\noobb\n').chart,
  );
  const colours = (markup: string) => new Set(strokes(markup));

  it('has the strings in their colours, on the row tied before', () => {
    const first = rowPicture(plan, 0, { knots: 2 });
    expect(colours(first)).toContain('#1f6fb2');
    expect(colours(first)).not.toContain('#e8742c');
    const second = rowPicture(plan, 1);
    for (const colour of ['#1f6fb2', '#e8742c']) expect(colours(second)).toContain(colour);
    const height = (markup: string) => Number(/height="(\d+)"/.exec(markup)?.[1]);
    expect(height(second)).toBeGreaterThan(height(first));
  });

  it('differs by knots, side and mirroring, and is the same for the same', () => {
    const all = [1, 1.5, 2, 3, 4].flatMap((knots) =>
      [true, false].flatMap((mirror) =>
        (['front', 'back'] as const).map((view) => rowPicture(plan, 1, { knots, view, mirror })),
      ),
    );
    expect(new Set(all).size).toBe(all.length);
    expect(rowPicture(plan, 1)).toBe(rowPicture(plan, 1, { knots: 4 }));
  });

  it('says which row it is, in English or German', () => {
    expect(rowPicture(plan, 1)).toContain('<title>Row 2 being tied, right to left, seen');
    expect(rowPicture(plan, 1, { lang: 'de' })).toContain('lang="de"');
    expect(rowPicture(plan, 0, { decorative: true })).not.toContain('<title>');
    expect(rowPicture(plan, 0, { label: '"><b>' })).not.toContain('<b>');
  });

  it('shows a part of a wide row, and refuses what is not there', () => {
    const wide = planAlpha(
      readTextChart(`b #1f6fb2 lake blue\n\n${'b'.repeat(60)}\n${'b'.repeat(60)}\n`).chart,
    );
    expect(rowPicture(wide, 0, { columns: [10, 14], knots: 13 })).toContain('<svg');
    expect(rowPicture(wide, 0, { columns: [10, 14] })).toContain('<svg');
    for (const row of [0, 1]) expect(rowPicture(wide, row)).toContain('<svg');
    for (const [row, options] of [
      [2, {}],
      [-1, {}],
      [0.5, {}],
      [0, { columns: [5, 4] }],
      [0, { columns: [0, 60] }],
      [0, { columns: [0, MOST_COLUMNS_PICTURED] }],
      [0, { columns: [10, 14], knots: 30 }],
      [0, { knots: Number.NaN }],
      [0, { width: 9 }],
    ] as const) {
      expect(() => rowPicture(wide, row, options)).toThrow(PictureError);
    }
  });
});
