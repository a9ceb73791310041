import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TIE_LIMITS, tieSettingsFrom, USUAL_TIE_SETTINGS } from '../../src/tie/settings.js';

describe('settings for tying', () => {
  it('are as they were kept', () => {
    const kept = {
      picture: 'knot',
      play: false,
      voice: true,
      rate: 0.75,
      awake: false,
      letters: false,
      rest: 0,
    };
    expect(tieSettingsFrom(kept)).toEqual(kept);
  });

  it('are what they can be, whatever was kept', () => {
    const field = fc.oneof(fc.anything(), fc.double(), fc.integer(), fc.boolean());
    const record = fc.record(
      {
        picture: field,
        play: field,
        voice: field,
        rate: field,
        awake: field,
        letters: field,
        rest: field,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.oneof(record, fc.anything()), (kept) => {
        const { picture, play, voice, rate, awake, letters, rest } = tieSettingsFrom(kept);
        expect(['row', 'knot', 'none']).toContain(picture);
        expect([play, voice, awake, letters].every((value) => typeof value === 'boolean')).toBe(
          true,
        );
        const [slowest, fastest] = TIE_LIMITS.rate;
        expect(rate >= slowest && rate <= fastest).toBe(true);
        const [soonest, latest] = TIE_LIMITS.rest;
        expect(rest === 0 || (rest >= soonest && rest <= latest)).toBe(true);
      }),
    );
  });

  it('are the usual ones where nothing was kept', () => {
    for (const kept of [undefined, null, 7, {}]) {
      expect(tieSettingsFrom(kept)).toEqual(USUAL_TIE_SETTINGS);
    }
  });
});
