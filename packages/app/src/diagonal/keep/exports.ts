import { printDiagonalDocument, printDiagonalPicture, printDiagonalText } from '@halfhitch/core';
import { keepDesk } from '../../keep/desk.js';
import { type Export, projectDocument } from '../../keep/exports.js';
import type { DiagonalProject } from '../../project/project.js';
import { drawnPicture } from '../edit/pattern.js';
import type { DiagonalDesk } from '../work/desk.js';
import { asKnotted } from './as-knotted.js';

let desk: Promise<DiagonalDesk> | null = null;

/** One for files: what is open goes on in the session's own. */
function diagonalDesk(): Promise<DiagonalDesk> {
  desk ??= import('../work/desk.js').then(({ DiagonalDesk }) => new DiagonalDesk());
  return desk;
}

async function instructionsOf(project: DiagonalProject, as: 'html' | 'text'): Promise<string> {
  const { pattern } = asKnotted(project);
  return (await diagonalDesk()).ask({ ask: 'instructions', pattern, as });
}

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
    name: 'Instructions',
    about:
      'Row by row in words, with pictures: a page to be read, read aloud or printed, without a connection.',
    ending: '.html',
    type: 'text/html',
    make: (project) => instructionsOf(project, 'html'),
  },
  {
    name: 'Instructions as text',
    about: 'The same words alone.',
    ending: '-instructions.txt',
    type: 'text/plain',
    make: (project) => instructionsOf(project, 'text'),
  },
  {
    name: 'Plan',
    about: 'Every half hitch as a step, for programs.',
    ending: '-plan.json',
    type: 'application/json',
    make: async (project) =>
      (await diagonalDesk()).ask({ ask: 'plan-document', pattern: asKnotted(project).pattern }),
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
