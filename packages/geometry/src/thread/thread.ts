import { InputError } from '@halfhitch/core';
import { diameterOfTex, FIBRES, type Fibre, texOfDiameter } from './density.js';

/** Stated limits of a thread, for one strand. */
export const THREAD_LIMITS = {
  minDiameter: 0.05,
  maxDiameter: 20,
  minTex: 1,
  maxTex: 250_000,
  maxStrands: 24,
} as const;

/** How a thread is given: by its fineness or by its diameter, and how many strands go together. */
export interface ThreadChoice {
  /** Linear density of one strand, tex. */
  readonly tex?: number;
  /** Diameter of one strand, mm. */
  readonly diameter?: number;
  /** Strands used together as one string. Default: 1. */
  readonly strands?: number;
  /** Default: cotton. */
  readonly fibre?: Fibre;
}

/** The thread as it is knotted: all strands of a string together. */
export interface Thread {
  readonly tex: number;
  /** Diameter of the whole string, mm. */
  readonly diameter: number;
  readonly strands: number;
  readonly fibre: Fibre;
  /** Standing for not knowing better: the share by which the diameter may be off. */
  readonly uncertainty: number;
}

/** Stranded cotton as it comes, six strands: about 2 g to 8 m (common practice, no source). */
const DEFAULT_TEX = 240;

/** How far a diameter may be off: measured with a rule, or from the fineness by Peirce's rule. */
const OFF_MEASURED = 0.05;
const OFF_FROM_TEX = 0.1;
const OFF_ASSUMED = 0.2;

/**
 * @throws InputError when a figure is no number, or outside the stated limits
 */
export function threadOf(choice: ThreadChoice = {}): Thread {
  const fibre = choice.fibre ?? 'cotton';
  if (!FIBRES.includes(fibre)) {
    throw new InputError(
      'unknown-fibre',
      `There is no fibre "${String(fibre)}".`,
      {},
      `Choose one of ${FIBRES.join(', ')}.`,
    );
  }
  const strands = choice.strands ?? 1;
  if (!Number.isInteger(strands) || strands < 1 || strands > THREAD_LIMITS.maxStrands) {
    throw new InputError(
      'strands',
      `${strands} strands cannot be used together.`,
      {},
      `Give a whole number from 1 to ${THREAD_LIMITS.maxStrands}.`,
    );
  }
  if (choice.tex !== undefined && choice.diameter !== undefined) {
    throw new InputError(
      'thread-twice',
      'The thread is given both by its tex and by its diameter.',
      {},
      'Give one of the two.',
    );
  }
  if (choice.diameter !== undefined) {
    within('diameter', choice.diameter, THREAD_LIMITS.minDiameter, THREAD_LIMITS.maxDiameter, 'mm');
    const tex = texOfDiameter(choice.diameter, fibre) * strands;
    // Strands side by side keep their cross-section: the diameter grows with its root.
    const diameter = choice.diameter * Math.sqrt(strands);
    return { tex, diameter, strands, fibre, uncertainty: OFF_MEASURED };
  }
  if (choice.tex !== undefined) {
    within('linear density', choice.tex, THREAD_LIMITS.minTex, THREAD_LIMITS.maxTex, 'tex');
  }
  const tex = (choice.tex ?? DEFAULT_TEX) * strands;
  return {
    tex,
    diameter: diameterOfTex(tex, fibre),
    strands,
    fibre,
    uncertainty: choice.tex === undefined ? OFF_ASSUMED : OFF_FROM_TEX,
  };
}

function within(what: string, value: number, least: number, most: number, unit: string): void {
  if (value >= least && value <= most) return;
  throw new InputError(
    'thread-limits',
    `A ${what} of ${value} ${unit} is outside what a thread can have.`,
    {},
    `Give a figure from ${least} to ${most} ${unit}.`,
  );
}
