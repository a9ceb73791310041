import { CUT_DEFAULTS, FIT_DEFAULTS } from '@halfhitch/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSettings } from '../../src/cut/read-settings.js';
import {
  type CutField,
  type CutSettings,
  settingsFrom,
  USUAL_SETTINGS,
} from '../../src/cut/settings.js';

const errorsOf = (change: object): Partial<Record<string, string>> => {
  const read = readSettings({ ...USUAL_SETTINGS, ...change });
  return 'errors' in read ? read.errors : {};
};

describe('the fields of the cut list', () => {
  it('ask for what a cut list has without being asked', () => {
    expect(readSettings(USUAL_SETTINGS)).toEqual({
      options: { thread: {}, ...CUT_DEFAULTS },
      length: null,
      wrist: null,
      ease: FIT_DEFAULTS.ease,
      closing: { how: 'meet' },
      buckleWidth: null,
    });
  });

  it('hold the lengths that are usual for closings', () => {
    for (const [field, usual] of Object.entries(FIT_DEFAULTS)) {
      expect(Number(USUAL_SETTINGS[field as keyof typeof FIT_DEFAULTS]), field).toBe(usual);
    }
  });

  it('are read for each closing; a bead is as if the ends met', () => {
    const closingOf = (closing: CutSettings['closing']) => {
      const read = readSettings({ ...USUAL_SETTINGS, closing, plait: '70', buckleWidth: '16' });
      return 'errors' in read ? read.errors : [read.closing, read.buckleWidth];
    };
    const { gap, loop, buckle, turnOver, overlap } = FIT_DEFAULTS;
    expect(closingOf('ties')).toEqual([{ how: 'ties', gap, plait: 70 }, null]);
    expect(closingOf('loop')).toEqual([{ how: 'loop', loop, plait: 70 }, null]);
    expect(closingOf('buckle')).toEqual([{ how: 'buckle', buckle, turnOver, overlap }, 16]);
    expect(closingOf('bead')).toEqual([{ how: 'meet' }, null]);
  });

  it('are read in their units', () => {
    const read = readSettings({
      ...USUAL_SETTINGS,
      thread: 'diameter',
      diameter: ' 0.8 ',
      strands: '2',
      span: 'wrist',
      wrist: '165',
      workable: '3.5',
      putUp: '20',
      swatchRows: '20',
      swatchColumns: '12',
      swatchWidth: '24.5',
      swatchLength: '48',
    });
    expect(read).toMatchObject({
      wrist: 165,
      length: null,
      options: {
        thread: { diameter: 0.8, strands: 2 },
        tails: 150,
        margin: 10,
        workable: 3_500,
        putUp: 20_000,
        swatch: { rows: 20, columns: 12, width: 24.5, length: 48 },
      },
    });
  });

  it.each<[CutField, string, RegExp]>([
    ['tails', '', /Nothing is filled in.*from 0 to 2,000 mm/],
    ['tails', 'long', /"long" is not a number/],
    ['tails', '-1', /from 0 to 2,000 mm/],
    ['tails', '1e3', /not a number/],
    ['tails', '0x10', /not a number/],
    ['margin', '201', /from 0 to 200 per cent/],
    ['workable', '0.1', /from 0.2 to 100 m/],
    ['putUp', '1,5', /without a comma/],
    ['swatchRows', '2.5', /whole number/],
    ['swatchWidth', '0', /from 1 to/],
  ])('%s: "%s" is told of', (field, text, message) => {
    expect(errorsOf({ [field]: text })[field]).toMatch(message);
  });

  it('are only read where they are shown', () => {
    expect(errorsOf({ diameter: 'x', tex: 'x', strands: 'x', length: 'x', wrist: 'x' })).toEqual(
      {},
    );
    expect(errorsOf({ plait: 'x', loop: 'x', overlap: 'x', buckleWidth: 'x' })).toEqual({});
    expect(Object.keys(errorsOf({ closing: 'loop', plait: 'x', loop: '', gap: 'x' }))).toEqual([
      'loop',
      'plait',
    ]);
    expect(Object.keys(errorsOf({ thread: 'tex', tex: 'x', strands: '0' }))).toEqual([
      'strands',
      'tex',
    ]);
  });

  it('are all told of at once, and a swatch by half in each field that is empty', () => {
    expect(
      Object.keys(errorsOf({ tails: 'x', margin: '', swatchRows: '20', swatchWidth: '24' })),
    ).toEqual(['tails', 'margin', 'swatchColumns', 'swatchLength']);
  });

  it('never throw, whatever is in them', () => {
    const texts = fc.oneof(fc.string({ maxLength: 12 }), fc.double().map(String));
    const settings = fc.record({
      ...Object.fromEntries(Object.keys(USUAL_SETTINGS).map((name) => [name, texts])),
      thread: fc.constantFrom('assumed', 'diameter', 'tex'),
      span: fc.constantFrom('chart', 'length', 'wrist'),
      closing: fc.constantFrom('meet', 'ties', 'loop', 'buckle', 'bead'),
    });
    fc.assert(
      fc.property(settings, (change) => {
        const read = readSettings(settingsFrom(change));
        expect('errors' in read || Number.isFinite(read.options.tails)).toBe(true);
      }),
    );
  });
});

describe('kept settings', () => {
  it('come back as they were', () => {
    const mine = { ...USUAL_SETTINGS, thread: 'tex', tex: '300', swatchRows: '20' };
    expect(settingsFrom(JSON.parse(JSON.stringify(mine)))).toEqual(mine);
  });

  it('are the usual ones wherever something else was kept', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (kept) => {
        expect(settingsFrom(kept)).toEqual(USUAL_SETTINGS);
      }),
    );
    const odd = { thread: 'rope', span: 3, tails: 'x'.repeat(13), margin: null, putUp: '9' };
    expect(settingsFrom(odd)).toEqual({ ...USUAL_SETTINGS, putUp: '9' });
    expect(settingsFrom(JSON.parse('{"__proto__": {"tails": "9"}}'))).toEqual(USUAL_SETTINGS);
  });
});
