import type { Words } from '../messages/words.js';
import type { LabelPlace } from './label-places.js';

/** How much of its own width a label goes to the left of its place. */
const SHIFT = { left: 1, across: 0.5, right: 0 } as const;

/** Writes the names of strings over a stage of this size, in pixels, wholly inside it. */
export function writeLabels(
  stage: Element,
  places: readonly LabelPlace[],
  words: Words,
  width: number,
  height: number,
): void {
  const labels = [...stage.querySelectorAll<HTMLElement>('.label')];
  while (labels.length < places.length) labels.push(newLabel(stage));
  labels.forEach((label, i) => {
    const place = places[i];
    label.hidden = place === undefined;
    if (place === undefined) return;
    const text = 'name' in place.label ? place.label.name : words(`label.${place.label.does}`);
    if (label.textContent !== text) label.textContent = text;
    const x = place.x - label.offsetWidth * SHIFT[place.lies];
    const across = Math.max(4, Math.min(width - label.offsetWidth - 4, x));
    const down = Math.max(6, Math.min(height - label.offsetHeight - 6, place.y));
    label.style.transform = `translate(${across.toFixed(0)}px, ${down.toFixed(0)}px)`;
  });
}

function newLabel(stage: Element): HTMLElement {
  const label = document.createElement('span');
  label.className = 'label';
  label.setAttribute('part', 'label');
  label.setAttribute('aria-hidden', 'true');
  stage.append(label);
  return label;
}
