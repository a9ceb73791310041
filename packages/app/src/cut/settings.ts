/** What the maker has filled in for the cut list, as it stands in the fields. */
export interface CutSettings {
  readonly thread: 'assumed' | 'diameter' | 'tex';
  /** Of one strand, mm. */
  readonly diameter: string;
  /** Of one strand, tex. */
  readonly tex: string;
  readonly strands: string;
  readonly span: 'chart' | 'length' | 'wrist';
  /** mm */
  readonly length: string;
  /** mm */
  readonly wrist: string;
  /** Room between skin and band, mm. */
  readonly ease: string;
  /** `bead` is asked for, and answered in words: beads aren't planned. */
  readonly closing: 'meet' | 'ties' | 'loop' | 'buckle' | 'bead';
  /** mm, as all that follow for closings; see the geometry's `Closing`. */
  readonly gap: string;
  readonly plait: string;
  readonly loop: string;
  readonly buckle: string;
  /** Widest band that goes through the buckle, mm. */
  readonly buckleWidth: string;
  readonly turnOver: string;
  readonly overlap: string;
  /** mm */
  readonly tails: string;
  /** Per cent. */
  readonly margin: string;
  /** Metres. */
  readonly workable: string;
  /** Metres. */
  readonly putUp: string;
  readonly swatchRows: string;
  readonly swatchColumns: string;
  /** mm */
  readonly swatchWidth: string;
  /** mm */
  readonly swatchLength: string;
}

export type CutField = Exclude<keyof CutSettings, 'thread' | 'span' | 'closing'>;

export const USUAL_SETTINGS: CutSettings = {
  thread: 'assumed',
  diameter: '0.6',
  tex: '240',
  strands: '1',
  span: 'chart',
  length: '150',
  wrist: '160',
  ease: '10',
  closing: 'meet',
  gap: '10',
  plait: '80',
  loop: '12',
  buckle: '8',
  buckleWidth: '20',
  turnOver: '15',
  overlap: '40',
  tails: '150',
  margin: '10',
  workable: '5',
  putUp: '8',
  swatchRows: '',
  swatchColumns: '',
  swatchWidth: '',
  swatchLength: '',
};

const CHOICES: Readonly<Record<string, readonly string[]>> = {
  thread: ['assumed', 'diameter', 'tex'],
  span: ['chart', 'length', 'wrist'],
  closing: ['meet', 'ties', 'loop', 'buckle', 'bead'],
};

/** Longest text that a field takes. */
export const MOST_LETTERS = 12;

const KEPT_AS = 'halfhitch.cut';

/**
 * The settings of last time. A browser may keep nothing (a private window, a full disk, storage
 * switched off), and what it kept may be from another version: then they are the usual ones.
 */
export function keptSettings(): CutSettings {
  try {
    return settingsFrom(JSON.parse(localStorage.getItem(KEPT_AS) ?? '{}'));
  } catch {
    return USUAL_SETTINGS;
  }
}

export function keepSettings(settings: CutSettings): void {
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify(settings));
  } catch {
    // They hold for this visit only.
  }
}

/** Settings from whatever was kept, each the usual one unless it is what it can be. */
export function settingsFrom(kept: unknown): CutSettings {
  if (typeof kept !== 'object' || kept === null) return USUAL_SETTINGS;
  const entries = Object.entries(USUAL_SETTINGS).map(([name, usual]) => {
    const value: unknown = Object.hasOwn(kept, name)
      ? (kept as Record<string, unknown>)[name]
      : usual;
    const fits =
      typeof value === 'string' &&
      value.length <= MOST_LETTERS &&
      (CHOICES[name]?.includes(value) ?? true);
    return [name, fits ? value : usual];
  });
  return Object.fromEntries(entries) as CutSettings;
}
