/**
 * A number as it is written on the page, on paper and in messages: 12,500.
 *
 * @param decimals written at least
 * @param most decimals written at most
 */
export function figures(value: number, decimals = 0, most = decimals): string {
  return value.toLocaleString('en-GB', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: most,
  });
}

/** "1 row", "1,250 rows" */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${figures(count)} ${count === 1 ? one : several}`;
}
