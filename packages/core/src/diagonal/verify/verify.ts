import { InputError } from '../../errors.js';
import { LONG_FLOAT } from '../../verify/verify.js';
import { knotsAcross, type Lattice } from '../lattice.js';
import type { DiagonalPattern } from '../pattern.js';
import type { DiagonalPicture } from '../picture.js';
import type { DiagonalPlan } from '../plan.js';
import { repeatOf } from '../repeat/repeat.js';
import { repeatInWords } from '../repeat/words.js';
import type { DiagonalVerification } from './findings.js';
import { DiagonalFollower } from './follower.js';
import { DiagonalLog } from './log.js';
import * as say from './messages.js';
import { Wanted } from './wanted.js';

export interface DiagonalVerifyOptions {
  /**
   * The pattern that draws the picture, where it is known: then kinds and starting colours are
   * compared too, and each mistake is found where it is made, not where it first shows.
   */
  readonly pattern?: DiagonalPattern;
  /** Rows a string may hang without a knot, between two, before that is reported. Default: 10. */
  readonly longLoose?: number;
}

/**
 * Says what the steps of a diagonal plan knot, and whether that is the picture. Knows no planner: it
 * runs the steps through the state machine and judges what comes of them.
 *
 * @param wanted colours per knot; ANY_COLOUR takes each, BARE wants no knot
 * @throws InputError when plan, picture and pattern are not for the same lattice, so that nothing can
 *   be compared
 */
export function verifyDiagonal(
  plan: DiagonalPlan,
  wanted: DiagonalPicture,
  options: DiagonalVerifyOptions = {},
): DiagonalVerification {
  const { pattern } = options;
  sameLattice('The plan', plan.lattice, 'the picture', wanted);
  if (pattern !== undefined) sameLattice('The pattern', pattern, 'the picture', wanted);
  if (plan.hung.length !== wanted.strings || plan.strings.length !== wanted.strings) {
    throw new InputError(
      'hung-strings',
      `The plan lists ${plan.strings.length} strings and hangs ${plan.hung.length}, but its lattice is for ${wanted.strings}.`,
      {},
      'In a diagonal pattern every string hangs from the start.',
    );
  }
  const log = new DiagonalLog(wanted);
  if (pattern !== undefined) reportStart(plan, pattern, log);
  const follower = new DiagonalFollower(
    plan,
    wanted,
    new Wanted(wanted, pattern ?? null),
    log,
    options.longLoose ?? LONG_FLOAT,
  );
  follower.run();
  if (log.wrong === 0) reportRepeat(plan, wanted, follower, log);
  const { knots, halfHitches, tying, kinds, order } = follower;
  return {
    ok: log.wrong === 0,
    rows: wanted.rows,
    strings: wanted.strings,
    knots,
    halfHitches,
    findings: log.finish(),
    tying,
    kinds,
    order,
  };
}

function sameLattice(what: string, one: Lattice, other: string, two: Lattice): void {
  if (one.strings === two.strings && one.rows === two.rows && one.first === two.first) return;
  throw new InputError(
    'other-lattice',
    `${what} is for ${inWords(one)}, but ${other} is for ${inWords(two)}.`,
    {},
    'Give a picture and a plan of the same pattern.',
  );
}

function inWords({ strings, rows, first }: Lattice): string {
  return `${strings} strings and ${rows} ${rows === 1 ? 'row' : 'rows'} from string ${first + 1} on`;
}

function reportStart(plan: DiagonalPlan, pattern: DiagonalPattern, log: DiagonalLog): void {
  const strings = new Map(plan.strings.map((string) => [string.id, string]));
  plan.hung.forEach((id, slot) => {
    const string = strings.get(id);
    const colour = pattern.colours[pattern.start[slot] as number];
    if (string === undefined || string.colour === colour?.hex) return;
    log.add('wrong', 'wrong-start', -1, -1, slot, () => say.wrongStart(string, colour));
  });
}

/** Says what keeps the pattern from being knotted again right below itself. */
function reportRepeat(
  plan: DiagonalPlan,
  wanted: DiagonalPicture,
  follower: DiagonalFollower,
  log: DiagonalLog,
): void {
  // Plans made by hand may hang strings whose colours the picture does not have.
  const hexes = [...new Set(plan.strings.map(({ colour }) => colour))];
  const byId = new Map(plan.strings.map((string) => [string.id, string]));
  const repeat = repeatOf({
    name: plan.name,
    strings: wanted.strings,
    rows: wanted.rows,
    first: wanted.first,
    colours: [],
    start: Uint8Array.from(plan.hung, (id) => hexes.indexOf(byId.get(id)?.colour ?? '')),
    knots: follower.kinds.subarray(0, wanted.rows * knotsAcross(wanted)),
  });
  if (repeat.sidesClose && repeat.order === 1n) return;
  log.atPlace('note', 'repeat-does-not-close', -1, -1, () => say.repeatOpen(repeatInWords(repeat)));
}
