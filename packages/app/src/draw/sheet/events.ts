import type { Chart } from '@halfhitch/core';
import type { Symmetry } from '../edit/symmetry.js';
import type { ToolName } from '../tools/tools.js';

/** What a sheet fires as `draw-edit`: the chart as it is now to be. */
export interface SheetEdit {
  readonly chart: Chart;
  /** For the button that takes it back. */
  readonly what: string;
}

/** What a sheet asks of the view, as `draw-ask`. */
export type SheetAsk =
  | { readonly ask: 'tool'; readonly tool: ToolName }
  /** By its place in the legend. */
  | { readonly ask: 'colour'; readonly colour: number }
  | { readonly ask: 'signs' }
  /** Something to be said. */
  | { readonly ask: 'say'; readonly text: string };

/** How the sheet shows the chart and what drawing does. */
export interface SheetSettings {
  readonly tool: ToolName;
  readonly colour: number;
  /** Colour that is left where something is taken away. */
  readonly ground: number;
  readonly symmetry: Symmetry;
  readonly signs: boolean;
  readonly asThread: boolean;
  readonly repeat: boolean;
}
