/** Largest files that are read, in bytes. A chart within CHART_LIMITS fits into them. */
export const FILE_LIMITS = {
  png: 16 * 1024 * 1024,
  /** Text charts and chart documents. */
  text: 32 * 1024 * 1024,
  plan: 256 * 1024 * 1024,
} as const;

/** A size as people write it: "16 MiB". Rounded up, so that what is over a limit is told as more. */
export function sizeInWords(bytes: number): string {
  return `${Math.ceil((10 * bytes) / (1024 * 1024)) / 10} MiB`;
}
