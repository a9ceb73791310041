/** What the maker wants while tying, the same for every project. */
export interface TieSettings {
  /** What is shown of the knot in hand. */
  readonly picture: 'row' | 'knot' | 'none';
  /** Whether each knot is played when it comes up. */
  readonly play: boolean;
  readonly voice: boolean;
  /** Of the voice; 1 is as it comes. */
  readonly rate: number;
  /** Whether the screen is kept on. */
  readonly awake: boolean;
  /** Whether letter keys do something: they are in the way of who dictates. */
  readonly letters: boolean;
  /** Minutes of knotting between reminders to rest; 0 for none. */
  readonly rest: number;
}

export const TIE_LIMITS = { rate: [0.5, 2], rest: [5, 120] } as const;

export const USUAL_TIE_SETTINGS: TieSettings = {
  picture: 'row',
  play: true,
  voice: false,
  rate: 1,
  awake: true,
  letters: true,
  rest: 30,
};

/** Settings from whatever was kept, each the usual one unless it is what it can be. */
export function tieSettingsFrom(kept: unknown): TieSettings {
  if (typeof kept !== 'object' || kept === null) return USUAL_TIE_SETTINGS;
  const found = kept as Partial<Record<keyof TieSettings, unknown>>;
  const usual = USUAL_TIE_SETTINGS;
  const yesNo = (value: unknown, otherwise: boolean): boolean =>
    typeof value === 'boolean' ? value : otherwise;
  const within = (value: unknown, [least, most]: readonly [number, number]): value is number =>
    typeof value === 'number' && value >= least && value <= most;
  const { picture, rate, rest } = found;
  return {
    picture:
      picture === 'row' || picture === 'knot' || picture === 'none' ? picture : usual.picture,
    play: yesNo(found.play, usual.play),
    voice: yesNo(found.voice, usual.voice),
    rate: within(rate, TIE_LIMITS.rate) ? rate : usual.rate,
    awake: yesNo(found.awake, usual.awake),
    letters: yesNo(found.letters, usual.letters),
    rest: rest === 0 || within(rest, TIE_LIMITS.rest) ? (rest as number) : usual.rest,
  };
}
