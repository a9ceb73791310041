/** The moves of one half hitch, in order. */
export type KnotStage = 'lying' | 'bar' | 'turned-behind' | 'through-loop' | 'snug';

export const KNOT_STAGES: readonly KnotStage[] = [
  'lying',
  'bar',
  'turned-behind',
  'through-loop',
  'snug',
];

/** Where each stage of a half hitch ends, as a fraction of the half. */
export const STAGE_ENDS: Readonly<Record<KnotStage, number>> = {
  lying: 0.05,
  bar: 0.25,
  'turned-behind': 0.5,
  'through-loop': 0.74,
  snug: 1,
};

export interface StageAt {
  readonly stage: KnotStage;
  /** 0 to 1 within the stage. */
  readonly progress: number;
}

/** The stage at a fraction (0 to 1) of a half hitch. */
export function stageAt(fraction: number): StageAt {
  let start = 0;
  for (const stage of KNOT_STAGES) {
    const end = STAGE_ENDS[stage];
    if (fraction < end || stage === 'snug') {
      return { stage, progress: Math.min((fraction - start) / (end - start), 1) };
    }
    start = end;
  }
  return { stage: 'snug', progress: 1 };
}
