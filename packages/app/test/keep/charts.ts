import { type Chart, KNOT_KINDS } from '@halfhitch/core';
import fc from 'fast-check';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import type { AlphaProject } from '../../src/project/project.js';

const KEYS = [...'abcdefghijklmnopqrstuvwxyz&<>"\'#`$é漢'];

/** Letters that mean something in markup, scripts, addresses or file names. */
export const HOSTILE = `</script></metadata></title><img src=x onerror="window.hurt=1"><script>window.hurt=1</script><!--]]>"'&\u202e\ufffe`;

const aName = fc
  .oneof(
    { weight: 4, arbitrary: fc.string({ maxLength: 30, unit: 'grapheme' }) },
    { weight: 1, arbitrary: fc.constant('</script><script>window.hurt=1</script>') },
  )
  .filter((name) => [...name].length <= 200 && !/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(name))
  .map((name) => name.trim());

/** Small charts with all that a chart can have. */
export function aChart(): fc.Arbitrary<Chart> {
  return fc
    .record({
      name: aName,
      rows: fc.integer({ min: 1, max: 12 }),
      columns: fc.integer({ min: 1, max: 12 }),
      keys: fc.uniqueArray(fc.constantFrom(...KEYS), { minLength: 1, maxLength: 8 }),
      names: fc.array(aName, { minLength: 8, maxLength: 8 }),
      hue: fc.integer({ min: 0, max: 0xffff }),
      edge: fc.option(fc.constantFrom('straight' as const, 'wrapped' as const)),
      start: fc.option(fc.constantFrom('left' as const, 'right' as const)),
      byHand: fc.boolean(),
      seed: fc.infiniteStream(fc.nat({ max: 1000 })),
    })
    .map(({ name, rows, columns, keys, names, hue, edge, start, byHand, seed }) => {
      const draw = (end: number): Uint8Array =>
        Uint8Array.from({ length: rows * columns }, () => seed.next().value % end);
      return {
        name,
        rows,
        columns,
        colours: keys.map((key, i) => ({
          key,
          hex: `#${((hue * 256 + i * 7) % 0x1000000).toString(16).padStart(6, '0')}`,
          name: names[i] as string,
        })),
        cells: draw(keys.length),
        ...(edge === null ? {} : { edge }),
        ...(start === null ? {} : { start }),
        ...(byHand ? { knots: draw(KNOT_KINDS.length) } : {}),
      };
    });
}

/** A project of a chart, knotted as the chart asks for. */
export const projectOf = (chart: Chart): AlphaProject => ({
  kind: 'alpha',
  id: '8c0d0c6e-5a1c-4a53-9d0f-0a6d5b1f2a11',
  chart,
  choice: { edge: chart.edge ?? 'straight', start: chart.start ?? 'left' },
  cut: { ...USUAL_SETTINGS, thread: 'tex', tex: '240' },
  created: Date.UTC(2027, 4, 1, 12),
  changed: Date.UTC(2027, 4, 2, 8, 30),
});
