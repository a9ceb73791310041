import type { Chart } from '@halfhitch/core';

/** A chart from rows of letters; every letter that occurs is a colour. */
export function drawn(...rows: readonly string[]): Chart {
  const keys = [...new Set(rows.join(''))].sort();
  return {
    name: '',
    rows: rows.length,
    columns: (rows[0] as string).length,
    colours: keys.map((key, i) => ({
      key,
      hex: `#${((i + 2) * 0x151b23).toString(16).padStart(6, '0')}`,
      name: `colour ${key}`,
    })),
    cells: Uint8Array.from([...rows.join('')].map((key) => keys.indexOf(key))),
  };
}
