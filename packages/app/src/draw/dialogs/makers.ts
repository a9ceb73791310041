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
  readonly show: () => TemplateResult;
}

export type MakerName = 'letters' | 'picture';

const parts = {
  ...import.meta.glob('../../lettering/lettering-panel.ts'),
  ...import.meta.glob('../../picture/from-picture.ts'),
};

const loaded = async (path: string): Promise<unknown> => {
  const load = parts[path];
  if (load === undefined) throw new Error('This part is not there.');
  return load();
};

export const MAKERS: Readonly<Record<MakerName, Maker>> = {
  letters: {
    title: 'Letters',
    load: () => loaded('../../lettering/lettering-panel.ts'),
    show: () => html`<halfhitch-lettering></halfhitch-lettering>`,
  },
  picture: {
    title: 'From a picture',
    load: () => loaded('../../picture/from-picture.ts'),
    show: () => html`<halfhitch-from-picture></halfhitch-from-picture>`,
  },
};
