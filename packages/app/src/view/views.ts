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
];

export const FIRST_VIEW = 'check';

/** The view that an address names, if it names one. */
export function viewIn(hash: string): View | null {
  const name = hash.replace(/^#/, '');
  return VIEWS.find((view) => view.name === name) ?? null;
}
