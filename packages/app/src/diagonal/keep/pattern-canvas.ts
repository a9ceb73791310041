import { ANY_COLOUR, BARE, type DiagonalPicture, knotsInRow, slotOfPlace } from '@halfhitch/core';
import { addLozenge } from '../lattice/lozenge.js';

/** Of a long band only the first rows are shown: the whole would be a thread. */
const TALLEST = 1.5;

/**
 * A small picture of the knots of a lattice; null where none can be drawn.
 *
 * @param side longest side, px
 */
export function patternCanvas(picture: DiagonalPicture, side: number): HTMLCanvasElement | null {
  const { strings, colours, cells } = picture;
  const rows = Math.min(picture.rows, Math.max(1, Math.ceil(TALLEST * strings)));
  const pitch = Math.min(side / strings, side / (rows + 1));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(pitch * strings));
  canvas.height = Math.max(1, Math.round(pitch * (rows + 1)));
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  // A line around each: thread may have the colour of the paper.
  pen.strokeStyle = 'rgb(70 84 98 / 60%)';
  pen.lineWidth = Math.min(1.5, pitch / 10);
  const across = Math.floor(strings / 2);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(picture, row); place++) {
      const cell = cells[row * across + place];
      if (cell === undefined || cell === BARE || cell === ANY_COLOUR) continue;
      const x = (slotOfPlace(picture, row, place) + 1) * pitch;
      pen.beginPath();
      addLozenge(pen, x, (row + 1) * pitch, pitch * 0.96, pitch * 0.96);
      pen.fillStyle = colours[cell]?.hex ?? '#808080';
      pen.fill();
      pen.stroke();
    }
  }
  return canvas;
}
