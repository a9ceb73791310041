import { InputError } from '../../errors.js';
import { CHART_LIMITS } from '../chart.js';
import { damaged } from './damage.js';

/** Colour types of PNG. */
export const ColourType = { grey: 0, rgb: 2, palette: 3, greyAlpha: 4, rgba: 6 } as const;
export type ColourType = (typeof ColourType)[keyof typeof ColourType];

export interface PngHeader {
  readonly width: number;
  readonly height: number;
  /** Bits of a sample: 1, 2, 4, 8 or 16. */
  readonly depth: number;
  readonly colourType: ColourType;
  /** Samples of a pixel. */
  readonly channels: number;
  readonly interlaced: boolean;
}

const DEPTHS: Readonly<Record<ColourType, readonly number[]>> = {
  [ColourType.grey]: [1, 2, 4, 8, 16],
  [ColourType.rgb]: [8, 16],
  [ColourType.palette]: [1, 2, 4, 8],
  [ColourType.greyAlpha]: [8, 16],
  [ColourType.rgba]: [8, 16],
};
const CHANNELS: Readonly<Record<ColourType, number>> = {
  [ColourType.grey]: 1,
  [ColourType.rgb]: 3,
  [ColourType.palette]: 1,
  [ColourType.greyAlpha]: 2,
  [ColourType.rgba]: 4,
};

/** Reads IHDR, and refuses the picture by its size before anything is unpacked. */
export function readHeader(data: Uint8Array): PngHeader {
  if (data.length !== 13) throw damaged('The header of the picture has a wrong length.');
  const view = new DataView(data.buffer, data.byteOffset, data.length);
  const width = view.getUint32(0);
  const height = view.getUint32(4);
  checkSize(width, height);
  const [depth, colourType, compression, filter, interlace] = data.subarray(8);
  if (!isColourType(colourType) || !DEPTHS[colourType].includes(depth as number)) {
    throw damaged(
      `The picture has colour type ${colourType} with ${depth} bits, which PNG does not have.`,
    );
  }
  if (compression !== 0 || filter !== 0 || (interlace as number) > 1) {
    throw damaged('The picture is packed in a way that PNG does not have.');
  }
  return {
    width,
    height,
    depth: depth as number,
    colourType,
    channels: CHANNELS[colourType],
    interlaced: interlace === 1,
  };
}

function isColourType(value: number | undefined): value is ColourType {
  return Object.values(ColourType).includes(value as ColourType);
}

function checkSize(width: number, height: number): void {
  if (width === 0 || height === 0) throw damaged('The picture has no pixels.');
  const { maxColumns, maxRows } = CHART_LIMITS;
  if (width <= maxColumns && height <= maxRows) return;
  const sideways = height <= maxColumns && width <= maxRows;
  throw new InputError(
    width > maxColumns ? 'too-many-columns' : 'too-many-rows',
    `The picture is ${width} pixels wide and ${height} high; a chart can have at most ${maxColumns} columns and ${maxRows} rows.`,
    {},
    sideways
      ? 'Turn it by a quarter, so that the length of the band runs down.'
      : 'One pixel is one knot: scale the picture down without smoothing until it is so.',
  );
}
