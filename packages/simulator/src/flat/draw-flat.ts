import type { FlatPiece } from './flat-picture.js';

/** Fills an SVG element with the pieces of a flat picture, in pixels of the given size. */
export function drawFlat(
  drawing: SVGElement,
  pieces: readonly FlatPiece[],
  width: number,
  height: number,
): void {
  drawing.setAttribute('viewBox', `0 0 ${width} ${height}`);
  const nodes: SVGElement[] = [];
  const stroke = (path: string, colour: string, thick: number, cap: string): void => {
    const node = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    node.setAttribute('d', path);
    node.setAttribute('fill', 'none');
    node.setAttribute('stroke', colour);
    node.setAttribute('stroke-width', thick.toFixed(1));
    node.setAttribute('stroke-linecap', cap);
    node.setAttribute('stroke-linejoin', 'round');
    nodes.push(node);
  };
  for (const piece of pieces) {
    const rim = isBright(piece.colour) ? '#26384a' : '#c9d4dc';
    const tone = (colour: string): string => (piece.faded ? faded(colour) : colour);
    const cap = piece.end ? 'round' : 'butt';
    stroke(piece.outline, tone(rim), piece.width + 2.6, cap);
    stroke(piece.path, tone(piece.colour), piece.width, cap);
    if (piece.mark !== '') stroke(piece.mark, tone(rim), piece.width * 0.17, 'round');
  }
  drawing.replaceChildren(...nodes);
}

/** Half way to a middling grey: what is not to be looked at. */
function faded(hex: string): string {
  return `color-mix(in srgb, ${hex} 55%, #aab6be)`;
}

function isBright(hex: string): boolean {
  const channel = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16) || 0;
  return 0.3 * channel(1) + 0.59 * channel(3) + 0.11 * channel(5) > 90;
}
