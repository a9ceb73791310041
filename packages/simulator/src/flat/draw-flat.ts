import type { FlatPiece } from './flat-picture.js';
import { flatStrokes } from './flat-strokes.js';

/** Fills an SVG element with the pieces of a flat picture, in pixels of the given size. */
export function drawFlat(
  drawing: SVGElement,
  pieces: readonly FlatPiece[],
  width: number,
  height: number,
): void {
  drawing.setAttribute('viewBox', `0 0 ${width} ${height}`);
  const nodes: SVGElement[] = [];
  for (const { path, colour, width: thick, cap } of flatStrokes(pieces)) {
    const node = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    node.setAttribute('d', path);
    node.setAttribute('fill', 'none');
    node.setAttribute('stroke', colour);
    node.setAttribute('stroke-width', thick.toFixed(1));
    node.setAttribute('stroke-linecap', cap);
    node.setAttribute('stroke-linejoin', 'round');
    nodes.push(node);
  }
  drawing.replaceChildren(...nodes);
}
