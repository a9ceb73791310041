/** What the exit code says; part of the stable interface. */
export const ExitCode = {
  /** It knots out as drawn, or what was asked for was done. */
  fine: 0,
  /** It does not knot out as drawn. */
  differs: 1,
  /** The input cannot be used, or the command was called wrongly. */
  unusable: 2,
  /** The time limit came first; what was found by then is told. */
  stopped: 3,
} as const;
export type ExitCode = (typeof ExitCode)[keyof typeof ExitCode];
