import { type Chart, fabricGeometry } from '@halfhitch/core';
import { drawnPicture } from '../diagonal/edit/pattern.js';
import { patternCanvas } from '../diagonal/keep/pattern-canvas.js';
import type { Project } from '../project/project.js';

/** Longest side of the picture, px; drawn twice as large as it is shown, for sharp screens. */
const SIDE = 288;
const CELLS = fabricGeometry(1, 1);

/** Of a long band only the first rows are shown: the whole would be a thread. */
const TALLEST = 1.5;

/** A small picture of a project with its knots in their true shape; null where none can be drawn. */
export async function thumbnailOf(project: Project): Promise<Blob | null> {
  const canvas =
    project.kind === 'alpha'
      ? chartCanvas(project.chart)
      : patternCanvas(drawnPicture(project), SIDE);
  if (canvas === null) return null;
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}

function chartCanvas(chart: Chart): HTMLCanvasElement | null {
  const aspect = CELLS.cellHeight / CELLS.cellWidth;
  const rows = Math.min(chart.rows, Math.max(1, Math.ceil((TALLEST * chart.columns) / aspect)));
  const wide = Math.min(SIDE / chart.columns, SIDE / (rows * aspect));
  const tall = wide * aspect;
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(wide * chart.columns));
  canvas.height = Math.max(1, Math.round(tall * rows));
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  const knotted = wide >= 6;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < chart.columns; column++) {
      const hex = chart.colours[chart.cells[row * chart.columns + column] ?? 0]?.hex ?? '#808080';
      pen.fillStyle = hex;
      // A little over the next, so that no seam shows.
      pen.fillRect(column * wide, row * tall, wide + 0.5, tall + 0.5);
    }
  }
  if (knotted) {
    pen.fillStyle = 'rgb(0 0 0 / 45%)';
    pen.beginPath();
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < chart.columns; column++) {
        pen.rect(column * wide, row * tall, wide, tall);
        pen.roundRect(column * wide + 0.6, row * tall + 0.6, wide - 1.2, tall - 1.2, tall / 2.6);
      }
    }
    pen.fill('evenodd');
  }
  return canvas;
}
