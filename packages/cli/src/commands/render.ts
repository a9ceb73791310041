import { extname } from 'node:path';
import {
  diagonalGeometry,
  diagonalPieces,
  fabricGeometry,
  fabricPieces,
  InputError,
  knotsInLattice,
  verifiedDrawing,
} from '@halfhitch/core';
import type { ExitCode } from '../exit-code.js';
import { inFile } from '../files/read-input.js';
import { keepInputs, writeOutput } from '../files/write-output.js';
import { warnIfWrong } from '../warn-if-wrong.js';
import { type DiagonalWork, type PlanningOptions, planFile, type Work } from '../work.js';

export const PICTURE_FORMATS = ['svg', 'png'] as const;
export type PictureFormat = (typeof PICTURE_FORMATS)[number];

export interface RenderOptions extends PlanningOptions {
  readonly output: string;
  readonly format?: PictureFormat;
}

/** Most knots in a PNG, and most pixels in all and along a side. */
const PNG_LIMITS = { knots: 40_000, pixels: 20_000_000, side: 16_000 } as const;

/** Pixels for each unit of the drawing, where the limits allow. */
const SCALE = 2;

export async function render(file: string, options: RenderOptions): Promise<ExitCode> {
  const format = options.format ?? formatOf(options.output);
  await keepInputs(options.output, [file]);
  const work = await planFile(file, options);
  const drawing = work.kind === 'alpha' ? alphaDrawing(work) : diagonalDrawing(work);
  if (format === 'png') {
    await writeOutput(options.output, [await inFile(file, () => asPng(drawing))]);
  } else {
    // Whole before it is written: a picture that is refused must not leave half a file.
    await writeOutput(
      options.output,
      inFile(file, () => [...drawing.pieces(null)]),
    );
  }
  return warnIfWrong(file, work);
}

function formatOf(output: string): PictureFormat {
  if (output === '-') return 'svg';
  const ending = extname(output).slice(1).toLowerCase();
  const format = PICTURE_FORMATS.find((known) => known === ending);
  if (format !== undefined) return format;
  throw new InputError(
    'unknown-picture-format',
    ending === '' ? 'The name has no ending.' : `The ending ".${ending}" is not known.`,
    { file: output },
    'Let it end in .svg or .png, or say --format svg or --format png.',
  );
}

/** A picture to be drawn, of a chart or of a diagonal pattern. */
interface Drawing {
  readonly knots: number;
  readonly width: number;
  readonly height: number;
  pieces(ground: string | null): Iterable<string>;
}

function alphaDrawing({ plan, verification }: Work): Drawing {
  const { rows, columns } = verification;
  const { width, height } = fabricGeometry(rows, columns);
  return {
    knots: rows * columns,
    width,
    height,
    pieces: (ground) => fabricPieces({ plan, verification, ground }),
  };
}

function diagonalDrawing({ plan, verification }: DiagonalWork): Drawing {
  const { width, height } = diagonalGeometry(plan.lattice);
  return {
    knots: knotsInLattice(plan.lattice),
    width,
    height,
    pieces: (ground) => diagonalPieces(verifiedDrawing(plan, verification), { ground }),
  };
}

function asPng({ knots, width, height, pieces }: Drawing): Promise<Uint8Array> {
  if (knots > PNG_LIMITS.knots) {
    throw new InputError(
      'picture-too-large',
      `A PNG picture of ${knots} knots would be too large; the most is ${PNG_LIMITS.knots}.`,
      {},
      'Render it as SVG, or draw fewer rows.',
    );
  }
  const scale = Math.min(
    SCALE,
    Math.sqrt(PNG_LIMITS.pixels / (width * height)),
    PNG_LIMITS.side / Math.max(width, height),
  );
  return toPng([...pieces('#ffffff')].join(''), Math.max(1, Math.floor(width * scale)));
}

/** The renderer is a large library, so it is loaded only when a PNG is asked for. */
async function toPng(svg: string, width: number): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js').catch(() => {
    throw new InputError(
      'no-png-renderer',
      'PNG pictures cannot be made here: @resvg/resvg-js is not installed for this system.',
      {},
      'Render it as SVG, or install Halfhitch again.',
    );
  });
  const picture = new Resvg(svg, {
    fitTo: { mode: 'width', value: width },
    font: { loadSystemFonts: false },
  });
  return picture.render().asPng();
}
