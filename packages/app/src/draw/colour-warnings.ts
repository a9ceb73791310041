import type { Chart } from '@halfhitch/core';
import type { ReactiveControllerHost } from 'lit';

/** Colours of a chart that are hard to tell apart, looked for beside whatever else goes on. */
export class ColourWarnings {
  private of: Chart | null = null;
  private sentences: readonly string[] = [];

  constructor(private readonly host: ReactiveControllerHost) {}

  get found(): readonly string[] {
    return this.sentences;
  }

  async find(chart: Chart): Promise<void> {
    if (this.of === chart) return;
    this.of = chart;
    const { colourWarnings } = await import('../colour/index.js');
    if (this.of !== chart) return;
    this.sentences = colourWarnings(chart);
    this.host.requestUpdate();
  }
}
