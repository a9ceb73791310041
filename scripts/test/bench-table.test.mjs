import { describe, expect, it } from 'vitest';
import { benchTable } from '../lib/bench-table.mjs';

const kept = { poses: { 'one knot': 3, 'a row': 10 } };
const table = (...ratios) => benchTable(ratios, kept);

describe('the table of ratios', () => {
  it('says which have drifted, and which way', () => {
    const { text, drifted } = table(
      { bench: 'poses', what: 'one knot', ratio: 5 },
      { bench: 'poses', what: 'a row', ratio: 6 },
    );
    expect(drifted).toBe(2);
    expect(text).toMatch(/one knot +5\.00 +3\.00 slower/);
    expect(text).toMatch(/a row +6\.00 +10\.0 faster/);
  });

  it('lets runs differ a little, and says what is new', () => {
    const { text, drifted } = table(
      { bench: 'poses', what: 'one knot', ratio: 3.9 },
      { bench: 'fabric', what: 'one colour', ratio: 4 },
    );
    expect(drifted).toBe(0);
    expect(text).toMatch(/one colour +4\.00 +new/);
  });
});
