import { printDiagonalDocument, printDiagonalPicture, printDiagonalText } from '@halfhitch/core';
import { keepDesk } from '../../keep/desk.js';
import { type Export, projectDocument } from '../../keep/exports.js';
import type { DiagonalProject } from '../../project/project.js';
import { drawnPicture } from '../edit/pattern.js';
import { asKnotted } from './as-knotted.js';

export const DIAGONAL_EXPORTS: readonly Export<DiagonalProject>[] = [
  {
    name: 'Project',
    about:
      'All of it: strings and knots, a picture that is still wanted, cut list and how far you are. To go on elsewhere, and as a copy to keep safe.',
    ending: '.halfhitch.json',
    type: 'application/json',
    make: projectDocument,
  },
  {
    name: 'Text pattern',
    about:
      'Colours of the strings and a mark for the way of each knot, to be read, changed and sent in any message.',
    ending: '.txt',
    type: 'text/plain',
    make: async (project) => printDiagonalText(asKnotted(project).pattern),
  },
  {
    name: 'Pattern document',
    about: 'The same as JSON, for programs.',
    ending: '.json',
    type: 'application/json',
    make: async (project) => printDiagonalDocument(asKnotted(project).pattern),
  },
  {
    name: 'Picture as text',
    about: 'The colours that are wanted, knot by knot, without the way to knot them.',
    ending: '-picture.txt',
    type: 'text/plain',
    make: async (project) => {
      const { pattern, wanted } = asKnotted(project);
      return printDiagonalPicture(drawnPicture({ ...project, pattern, wanted }));
    },
  },
  {
    name: 'SVG picture',
    about: 'The knotted piece, drawn as thread; up to 100,000 knots. Can be opened here again.',
    ending: '.svg',
    type: 'image/svg+xml',
    make: (project) => keepDesk.ask({ ask: 'diagonal-svg', pattern: asKnotted(project).pattern }),
  },
];
