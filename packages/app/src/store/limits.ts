/** Stated limits of what is kept on this device. */
export const STORE_LIMITS = {
  /** Projects, those that were removed and can still be brought back included. */
  projects: 1_000,
  /** Bytes of a project's small picture. */
  thumbnail: 512 * 1024,
  /** Times that are remembered for the maker's pace. */
  times: 240,
  /** Days after which a removed project is erased. */
  removedDays: 30,
} as const;
