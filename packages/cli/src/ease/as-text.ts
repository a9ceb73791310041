import {
  type BestWay,
  type Chart,
  type EasierReading,
  effortInWords,
  gainInWords,
  LETTERS_IN_WORDS,
  MIRRORING_IN_WORDS,
  printable,
  suggestionInWords,
  timeInWords,
  type Way,
} from '@halfhitch/core';

/** What would make a piece easier to knot, in words, a line at a time. */
export function* easeAsText(
  title: string,
  chart: Chart,
  reading: EasierReading,
  way: BestWay,
): Generator<string> {
  const { ok, before, suggestions, untried } = reading;
  yield `${printable(title)}: ${effortInWords(before)}.\n`;
  if (!ok) {
    yield 'It does not knot out as drawn, so nothing is suggested; "halfhitch check" says why.\n';
    return;
  }
  yield `About ${timeInWords(before.seconds)}, at an estimated 3 seconds for a half hitch and 20 for a colour change.\n`;
  if (suggestions.length === 0) yield '\nNothing small was found that would make it easier.\n';
  else yield '\nEach of these by itself:\n';
  for (const suggestion of suggestions) {
    const shape = suggestion.ofShape ? ' Part of a larger shape.' : '';
    yield `  ${suggestionInWords(chart, suggestion)} ${gainInWords(suggestion.gain)}${shape}\n`;
  }
  if (untried > 0) yield `  ${untried} more ideas were not tried, since the chart is large.\n`;
  yield '\nWays to start, the best first:\n';
  for (const each of way.ways) yield `  ${wayInWords(each, way)}\n`;
  const letters = LETTERS_IN_WORDS[way.best.mirroring];
  if (letters !== '') yield `The best way: ${lower(letters)}\n`;
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

function wayInWords(each: Way, { current }: BestWay): string {
  const now = each === current ? ' (as now)' : '';
  const state = { proven: '', wrong: '; does not knot out', counted: '; counted, not proven' };
  return `from the ${each.start}, ${MIRRORING_IN_WORDS[each.mirroring]}${now}: ${effortInWords(each.effort)}${state[each.state]}`;
}
