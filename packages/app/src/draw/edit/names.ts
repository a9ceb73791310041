import { CHART_LIMITS, type Chart, InputError } from '@halfhitch/core';

const NOT_IN_NAME = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u;

/** The name without blanks around it. @throws InputError when a chart can't hold it */
export function checkName(name: string, path: string): string {
  const tidy = name.trim();
  if ([...tidy].length > CHART_LIMITS.maxName) {
    throw new InputError(
      'name-too-long',
      'The name is too long.',
      { path },
      `Use at most ${CHART_LIMITS.maxName} characters.`,
    );
  }
  if (NOT_IN_NAME.test(tidy)) {
    throw new InputError(
      'bad-name',
      'The name holds a line break or another control character.',
      { path },
      'Write it on one line, in plain characters.',
    );
  }
  return tidy;
}

export function chartRenamed(chart: Chart, name: string): Chart {
  const tidy = checkName(name, 'name');
  return tidy === chart.name ? chart : { ...chart, name: tidy };
}
