import type { Chart } from '@halfhitch/core';
import { html, type TemplateResult } from 'lit';

/** What a maker of charts fires as `chart-made`. */
export interface ChartMade {
  readonly chart: Chart;
  /** For the button that takes it back: "Write Heron". */
  readonly what: string;
}

/** Something that makes charts in a way of its own, loaded when it is first asked for. */
export interface Maker {
  readonly title: string;
  readonly load: () => Promise<unknown>;
  /**
   * @param colours of the open chart
   * @param aspect width of a knot by its height; null while that is not known
   */
  readonly show: (colours: Chart['colours'], aspect: number | null) => TemplateResult;
}

export type MakerName = 'letters' | 'picture';

export const MAKERS: Readonly<Record<MakerName, Maker>> = {
  letters: {
    title: 'Letters',
    load: () => import('../../lettering/lettering-panel.js'),
    show: (colours, aspect) =>
      html`<halfhitch-lettering .colours=${colours} .aspect=${aspect}></halfhitch-lettering>`,
  },
  picture: {
    title: 'From a picture',
    load: () => import('../../picture/from-picture.js'),
    show: (colours, aspect) =>
      html`<halfhitch-from-picture .colours=${colours} .aspect=${aspect}></halfhitch-from-picture>`,
  },
};
