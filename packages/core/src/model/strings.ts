export type StringId = string;

export type StringRole = 'base' | 'lead';

/** One thread of the piece. */
export interface ThreadString {
  readonly id: StringId;
  readonly role: StringRole;
  /** Colour as `#rrggbb`, lower case. */
  readonly colour: string;
  /** What the maker calls the colour; may be empty. */
  readonly name: string;
}

/** Most strings one piece can have: string numbers are kept in 16 bits. */
export const MAX_STRINGS = 65_535;
