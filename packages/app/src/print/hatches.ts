import type { Chart } from '@halfhitch/core';
import { svg, type TemplateResult } from 'lit';
import { MOST_BY_HATCH } from './chart-layout.js';

/** Side of a hatch's square, mm. */
const TILE = 1.6;
const INK = '#1a1a1a';

const line = (d: string, width: number): TemplateResult =>
  svg`<path d=${d} fill="none" stroke=${INK} stroke-width=${width} />`;

const dots = (radius: number, ...at: readonly (readonly [number, number])[]): TemplateResult[] =>
  at.map(([x, y]) => svg`<circle cx=${x} cy=${y} r=${radius} fill=${INK} />`);

const HALF = TILE / 2;
const RISING = `M0 ${TILE}L${TILE} 0M${-HALF} ${HALF}L${HALF} ${-HALF}M${HALF} ${TILE + HALF}L${TILE + HALF} ${HALF}`;
const FALLING = `M0 0L${TILE} ${TILE}M${-HALF} ${HALF}L${HALF} ${TILE + HALF}M${HALF} ${-HALF}L${TILE + HALF} ${HALF}`;

/** From no ink to all of it, each unlike the others in more than its darkness. */
const HATCHES: readonly (() => TemplateResult | readonly TemplateResult[])[] = [
  () => [],
  () => dots(0.2, [HALF, HALF]),
  () => line(`M0 ${HALF}H${TILE}`, 0.2),
  () => line(`M${HALF} 0V${TILE}`, 0.2),
  () => line(RISING, 0.22),
  () => line(FALLING, 0.22),
  () => dots(0.3, [0.4, 0.4], [1.2, 1.2]),
  () => line(`M0 ${HALF}H${TILE}M${HALF} 0V${TILE}`, 0.25),
  () => line(RISING + FALLING, 0.25),
  () => line(`M0 0.4H${TILE}M0 1.2H${TILE}`, 0.4),
  () =>
    svg`<path d="M0 0h${HALF}v${HALF}h${-HALF}zM${HALF} ${HALF}h${HALF}v${HALF}h${-HALF}z" fill=${INK} />`,
  () => svg`<path d="M0 0h${TILE}v${TILE}h${-TILE}z" fill=${INK} />`,
];

/** How one colour of the chart is marked on paper. */
export interface Marking {
  /** Place in the chart's colours. */
  readonly colour: number;
  /** Place in the hatches. */
  readonly hatch: number;
  readonly solid: boolean;
  /** Behind the hatch: the thread's colour, lightened so that the hatch is seen on it. */
  readonly tint: string;
}

/**
 * A hatch for each colour that is drawn, darker ones for darker threads, so that a print in black
 * and white still looks like the piece. Beyond twelve colours hatches come again.
 */
export function markingsOf({ colours, cells }: Chart): readonly Marking[] {
  const drawn = [...new Set(cells)].sort((one, other) => one - other);
  const byLight = drawn
    .map((colour) => ({ colour, light: lightOf(colours[colour]?.hex ?? '#808080') }))
    .sort((one, other) => other.light - one.light || one.colour - other.colour);
  const last = HATCHES.length - 1;
  const spread = byLight.length - 1;
  const found = byLight.map(({ colour }, i): Marking => {
    const hatch =
      byLight.length > MOST_BY_HATCH
        ? i % HATCHES.length
        : spread === 0
          ? 0
          : Math.round((i * last) / spread);
    return {
      colour,
      hatch,
      solid: hatch === last,
      tint: tintOf(colours[colour]?.hex ?? '#808080'),
    };
  });
  return found.sort((one, other) => one.colour - other.colour);
}

/** The hatches as patterns for `fill`, named by `patternId`. */
export function hatchPatterns(prefix: string, markings: readonly Marking[]): TemplateResult[] {
  const hatches = [...new Set(markings.map(({ hatch }) => hatch))];
  return hatches.map(
    (hatch) => svg`<pattern
      id=${patternId(prefix, hatch)}
      width=${TILE}
      height=${TILE}
      patternUnits="userSpaceOnUse"
    >${HATCHES[hatch]?.()}</pattern>`,
  );
}

export function patternId(prefix: string, hatch: number): string {
  return `${prefix}hatch-${hatch}`;
}

/** Relative luminance (WCAG 2.2). */
function lightOf(hex: string): number {
  const [red, green, blue] = channelsOf(hex).map((byte) => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function tintOf(hex: string): string {
  const mixed = channelsOf(hex).map((byte) => Math.round(byte * 0.4 + 255 * 0.6));
  return `#${mixed.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

function channelsOf(hex: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
}
