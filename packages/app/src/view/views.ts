import '../learn/lesson-requests.js';
import { html, type TemplateResult } from 'lit';
import type { Project } from '../project/project.js';
import type { Session } from '../project/session.js';

/** What shows a view, loaded when it is first opened. */
export interface Shown {
  readonly load: () => Promise<unknown>;
  readonly show: (session: Session) => TemplateResult;
}

/** One side of the workbench. */
export interface View {
  /** In the address, after the number sign. */
  readonly name: string;
  readonly label: string;
  /** What it is for, read out and shown on hovering. */
  readonly about: string;
  /** By the kind of the open project. */
  readonly of: Readonly<Record<Project['kind'], Shown>>;
}

const CUT: Shown = {
  load: () => import('../cut/cut-panel.js'),
  show: (session) =>
    html`<section class="card cut-card" aria-labelledby="cut-name">
      <halfhitch-cut .session=${session}></halfhitch-cut>
    </section>`,
};

const LEARN: Shown = {
  load: () => import('../learn/learn-view.js'),
  show: (session) => html`<halfhitch-learn .session=${session}></halfhitch-learn>`,
};

const KEEP: Shown = {
  load: () => import('../keep/keep-view.js'),
  show: (session) => html`<halfhitch-keep .session=${session}></halfhitch-keep>`,
};

export const VIEWS: readonly View[] = [
  {
    name: 'draw',
    label: 'Draw',
    about: 'Draw the pattern, and see at once what comes of it',
    of: {
      alpha: {
        load: () => import('../draw/draw-view.js'),
        show: (session) => html`<halfhitch-draw .session=${session}></halfhitch-draw>`,
      },
      diagonal: {
        load: () => import('../diagonal/draw/draw-view.js'),
        show: (session) =>
          html`<halfhitch-diagonal-draw .session=${session}></halfhitch-diagonal-draw>`,
      },
    },
  },
  {
    name: 'check',
    label: 'Check',
    about: 'See whether it knots out as drawn, and watch each knot',
    of: {
      alpha: {
        load: () => import('./check-view.js'),
        show: (session) => html`<halfhitch-check .session=${session}></halfhitch-check>`,
      },
      diagonal: {
        load: () => import('../diagonal/check/check-view.js'),
        show: (session) =>
          html`<halfhitch-diagonal-check .session=${session}></halfhitch-diagonal-check>`,
      },
    },
  },
  {
    name: 'cut',
    label: 'Cut',
    about: 'How much thread to cut',
    of: { alpha: CUT, diagonal: CUT },
  },
  {
    name: 'tie',
    label: 'Tie',
    about: 'Follow along, knot by knot',
    of: {
      alpha: {
        load: () => import('../tie/tie-view.js'),
        show: (session) => html`<halfhitch-tie .session=${session}></halfhitch-tie>`,
      },
      diagonal: {
        load: () => import('../diagonal/tie/tie-view.js'),
        show: (session) =>
          html`<halfhitch-diagonal-tie .session=${session}></halfhitch-diagonal-tie>`,
      },
    },
  },
  {
    name: 'learn',
    label: 'Learn',
    about: 'Lessons with moving pictures, and any knot of your chart as a lesson',
    of: { alpha: LEARN, diagonal: LEARN },
  },
  {
    name: 'keep',
    label: 'Keep',
    about: 'Your projects; files, links and print sheets of the open one',
    of: { alpha: KEEP, diagonal: KEEP },
  },
];

export const FIRST_VIEW = 'check';

/** The view that an address names, if it names one. */
export function viewIn(hash: string): View | null {
  const name = hash.replace(/^#/, '');
  return VIEWS.find((view) => view.name === name) ?? null;
}
