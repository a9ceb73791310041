import { NO_SYMMETRY } from '../../draw/edit/symmetry.js';
import type { Inks } from '../../draw/sheet/inks.js';
import { SignStamps } from '../../draw/sheet/signs.js';
import { HEADER, LatticeLayout } from '../lattice/layout.js';
import type { LatticeLook } from '../lattice/look.js';
import { paintLattice } from '../lattice/paint-lattice.js';

/** Black on white, whatever the page looks like. */
const ON_PAPER: Inks = {
  ink: '#111111',
  soft: '#444444',
  card: '#ffffff',
  ground: '#eeeeee',
  lake: '#111111',
  buoy: '#111111',
};

/** String to string, px; and how much finer it is drawn than that, for printers. */
const PITCH = 16;
const FINER = 3;

/** Some rows of a lattice, as they are printed. */
export interface LatticeImage {
  readonly image: Blob;
  /** Of the paper's width. */
  readonly share: number;
}

/** Rows that fit a page, where the strings go across it or are as large as they need be. */
export function rowsOnPage(strings: number, paper: { width: number; height: number }): number {
  const pitch = pitchOnPaper(strings, paper);
  return Math.max(8, Math.floor(paper.height / pitch) - 8);
}

/** mm from string to string: large enough to put a finger on, where there is room. */
function pitchOnPaper(strings: number, { width }: { width: number }): number {
  return Math.min(7, width / (strings + 5));
}

/** @returns null where the browser can draw none */
export async function latticeImage(
  look: LatticeLook,
  rows: { readonly first: number; readonly end: number },
  signs: boolean,
  paper: { width: number; height: number },
): Promise<LatticeImage | null> {
  const { lattice } = look;
  const free = { width: 0, height: 0 };
  const { width, top, rise } = new LatticeLayout({ lattice, aspect: 1, pitch: PITCH, view: free });
  const last = rows.end === lattice.rows;
  const height = HEADER + (rows.end - rows.first + (last ? 2.5 : 1)) * rise;
  const layout = new LatticeLayout({ lattice, aspect: 1, pitch: PITCH, view: { width, height } });
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * FINER);
  canvas.height = Math.ceil(height * FINER);
  const ctx = canvas.getContext('2d');
  if (ctx === null) return null;
  paintLattice(
    ctx,
    {
      layout,
      look,
      scroll: { left: 0, top: rows.first === 0 ? 0 : top + (rows.first - 1) * rise - HEADER },
      view: { width, height },
      dpr: FINER,
      signs,
      symmetry: NO_SYMMETRY,
      marks: [],
      veiledFrom: null,
      here: { row: -1 },
      inks: ON_PAPER,
    },
    new SignStamps(),
  );
  const image = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  const mm = (width / PITCH) * pitchOnPaper(lattice.strings, paper);
  return image === null ? null : { image, share: Math.min(1, mm / paper.width) };
}
