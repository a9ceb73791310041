import { printChartDocument } from '@halfhitch/core';
import type { AlphaProject, Project } from '../project/project.js';
import { theStore } from '../store/open-store.js';
import { chartAsKnotted } from './as-knotted.js';
import { keepDesk } from './desk.js';
import type { CarriedProgress } from './project-document.js';
import { tutorialOf } from './tutorial-page.js';

/** A kind of file that a project is written as. */
export interface Export<P extends Project> {
  readonly name: string;
  readonly about: string;
  readonly ending: string;
  readonly type: string;
  readonly make: (project: P) => Promise<string | Uint8Array<ArrayBuffer>>;
}

/** All of a project of any kind, with how far it is tied. */
export async function projectDocument(project: Project): Promise<string> {
  return keepDesk.ask({ ask: 'project', project, progress: await progressOf(project) });
}

async function progressOf({ id }: Project): Promise<CarriedProgress | null> {
  try {
    const progress = await (await theStore()).progress(id);
    if (progress === null) return null;
    const { done, columns, active, marks } = progress;
    return { done, columns, seconds: active, marks };
  } catch {
    // The piece is worth more than its count.
    return null;
  }
}

export const EXPORTS: readonly Export<AlphaProject>[] = [
  {
    name: 'Project',
    about:
      'All of it: chart, how it is knotted, cut list and how far you are. To go on elsewhere, and as a copy to keep safe.',
    ending: '.halfhitch.json',
    type: 'application/json',
    make: projectDocument,
  },
  {
    name: 'Chart document',
    about: 'The chart alone, with its edges and start, as text that programs read.',
    ending: '.json',
    type: 'application/json',
    make: async (project) => printChartDocument(chartAsKnotted(project)),
  },
  {
    name: 'PNG chart',
    about:
      'One pixel a knot, to be drawn on in any drawing program. Names of colours are not kept.',
    ending: '.png',
    type: 'image/png',
    make: (project) => keepDesk.ask({ ask: 'png', chart: chartAsKnotted(project) }),
  },
  {
    name: 'SVG picture',
    about: 'The knotted piece, drawn as thread; up to 100,000 knots. Can be opened here again.',
    ending: '.svg',
    type: 'image/svg+xml',
    make: (project) =>
      keepDesk.ask({ ask: 'svg', chart: chartAsKnotted(project), choice: project.choice }),
  },
  {
    name: 'Web page',
    about:
      'One file that shows every knot being tied, without a connection; up to 100,000 knots. Can be opened here again.',
    ending: '.html',
    type: 'text/html',
    make: (project) => tutorialOf(chartAsKnotted(project)),
  },
  {
    name: '3D model',
    about:
      'The finished piece as binary glTF, in metres; up to 20,000 knots, with less detail the more there are. 20 to 110 MB from a thousand knots on.',
    ending: '.glb',
    type: 'model/gltf-binary',
    make: (project) =>
      keepDesk.ask({ ask: 'model', chart: chartAsKnotted(project), choice: project.choice }),
  },
];
