import '../learn/lesson-requests.js';
import { html, type TemplateResult } from 'lit';
import type { Session } from '../project/session.js';

/** One side of the workbench, loaded when it is first opened. */
export interface View {
  /** In the address, after the number sign. */
  readonly name: string;
  readonly label: string;
  /** What it is for, read out and shown on hovering. */
  readonly about: string;
  readonly load: () => Promise<unknown>;
  readonly show: (session: Session) => TemplateResult;
}

export const VIEWS: readonly View[] = [
  {
    name: 'draw',
    label: 'Draw',
    about: 'Draw the chart, and see at once what comes of it',
    load: () => import('../draw/draw-view.js'),
    show: (session) => html`<halfhitch-draw .session=${session}></halfhitch-draw>`,
  },
  {
    name: 'check',
    label: 'Check',
    about: 'See whether it knots out as drawn, and watch each knot',
    load: () => import('./check-view.js'),
    show: (session) => html`<halfhitch-check .session=${session}></halfhitch-check>`,
  },
  {
    name: 'cut',
    label: 'Cut',
    about: 'How much thread to cut',
    load: () => import('../cut/cut-panel.js'),
    show: (session) =>
      html`<section class="card cut-card" aria-labelledby="cut-name">
        <halfhitch-cut .session=${session}></halfhitch-cut>
      </section>`,
  },
  {
    name: 'tie',
    label: 'Tie',
    about: 'Follow along, knot by knot',
    load: () => import('../tie/tie-view.js'),
    show: (session) => html`<halfhitch-tie .session=${session}></halfhitch-tie>`,
  },
  {
    name: 'learn',
    label: 'Learn',
    about: 'Lessons with moving pictures, and any knot of your chart as a lesson',
    load: () => import('../learn/learn-view.js'),
    show: (session) => html`<halfhitch-learn .session=${session}></halfhitch-learn>`,
  },
  {
    name: 'keep',
    label: 'Keep',
    about: 'Your projects; files, links and print sheets of the open one',
    load: () => import('../keep/keep-view.js'),
    show: (session) => html`<halfhitch-keep .session=${session}></halfhitch-keep>`,
  },
];

export const FIRST_VIEW = 'check';

/** The view that an address names, if it names one. */
export function viewIn(hash: string): View | null {
  const name = hash.replace(/^#/, '');
  return VIEWS.find((view) => view.name === name) ?? null;
}
