import { printable } from '@halfhitch/core';
import { untitled } from '../project/project.js';
import type { ProjectSummary } from '../store/listing.js';
import { counted, figures } from '../view/figures.js';

export function listedName({ name, kind }: ProjectSummary): string {
  return printable(name) || untitled(kind);
}

/** Its size, and how much of it is tied. */
export function sizeInWords(one: ProjectSummary): string {
  const { kind, rows, across, knots, done, doneDamaged } = one;
  const size =
    kind === 'alpha'
      ? `${counted(rows, 'row')} of ${counted(across, 'knot')}`
      : `Diagonal, ${counted(rows, 'row')} on ${counted(across, 'string')}`;
  if (doneDamaged) return `${size}; the count of knots tied can't be read, and begins anew`;
  if (done === 0) return size;
  if (done >= knots) return `${size}, all tied`;
  return `${size}, ${figures(done)} of ${figures(knots)} tied`;
}

/** "24 Nov 2026, 19:05" */
export function whenInWords(time: number): string {
  return new Date(time).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}
