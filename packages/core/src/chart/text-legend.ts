import { listed, quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import type { ChartColour, EdgeTechnique, StartSide } from './chart.js';
import { type Breach, badHex, badKey, badName, Legend, readHex, tidyName } from './legend.js';
import type { Line } from './text-lines.js';

/** The patterns below are tried on short lines only, as they could take long on a long one. */
const LONGEST_LINE = 1_000;

const HEX = '(?<hex>#(?:[0-9a-fA-F]{6}|[0-9a-fA-F]{3})(?![^\\s=:]))';
const MARK = '\\s*[=:]?\\s*';
/** A colour line, with an equals sign or a colon between its parts or not. */
const COLOUR_LINES = [
  new RegExp(`^(?<key>\\S)${MARK}${HEX}${MARK}(?<name>.*)$`, 'u'),
  new RegExp(`^${HEX}${MARK}(?<key>\\S)(?:(?:\\s*[=:]\\s*|\\s+)(?<name>.*))?$`, 'u'),
  new RegExp(`^(?<key>\\S)(?:\\s*[=:]\\s*|\\s+)(?<name>.*\\S)\\s+${HEX}$`, 'u'),
];
const SETTING = /^(?<word>name|edge|start)(?:\s*[=:]\s*|\s+|$)(?<value>.*)$/iu;

const EDGES: readonly EdgeTechnique[] = ['straight', 'wrapped'];
const STARTS: readonly StartSide[] = ['left', 'right'];

interface Settings {
  name?: string;
  edge?: EdgeTechnique;
  start?: StartSide;
}

/** Reads the first block of a text chart: colours, and settings in words of several letters. */
export function readLegend(lines: readonly Line[]): { legend: Legend; settings: Settings } {
  const legend = new Legend();
  const settings: Settings = {};
  for (const line of lines) {
    if (line.text.length > LONGEST_LINE) {
      stop(line, 1, {
        code: 'line-too-long',
        what: `A line of the legend has more than ${LONGEST_LINE} characters.`,
        remedy: 'A text chart begins with its legend, such as "b #1f6fb2 lake blue".',
      });
    }
    const text = line.text.trimStart().replace(/\t+/g, ' ');
    const setting = SETTING.exec(text)?.groups;
    if (setting !== undefined) {
      set(settings, setting['word'] as string, setting['value'] as string, line);
      continue;
    }
    const colour = readColour(text, line, legend);
    const breach = badKey(colour.key) ?? badName(colour.name) ?? legend.add(colour);
    if (breach !== undefined) stop(line, 1, breach);
  }
  if (legend.colours.length === 0) {
    stop(lines.at(-1) as Line, undefined, {
      code: 'no-colours',
      what: 'The legend has no colours.',
      remedy: 'Write a line for each, such as "b #1f6fb2 lake blue".',
    });
  }
  return { legend, settings };
}

function readColour(text: string, line: Line, legend: Legend): ChartColour {
  for (const pattern of COLOUR_LINES) {
    const found = pattern.exec(text)?.groups;
    const hex = readHex(found?.['hex'] ?? '');
    if (found === undefined || hex === undefined) continue;
    return { key: found['key'] as string, hex, name: tidyName(found['name'] ?? '') };
  }
  return refuse(text, line, legend);
}

/** Says what a line is that is neither a colour nor a setting. */
function refuse(text: string, line: Line, legend: Legend): never {
  if (legend.colours.length > 0 && [...text].every((key) => knows(legend, key))) {
    stop(line, 1, {
      code: 'blank-line-missing',
      what: 'This looks like a row of knots, but the legend has not ended.',
      remedy: 'Leave one line blank between the legend and the rows.',
    });
  }
  const second = /^\S\s*[=:]?\s*(?<given>\S+)/u.exec(text);
  const given = second?.groups?.['given'];
  const separated = /^\S(?:\s|[=:])/u.test(text);
  if (given !== undefined && (separated || given.startsWith('#'))) {
    const hash = /#[^\s]*/u.exec(text.slice(1));
    const bad = hash?.[0] ?? given;
    stop(line, [...line.text.slice(0, line.text.indexOf(bad, 1))].length + 1, badHex(bad));
  }
  return stop(line, 1, {
    code: 'bad-legend',
    what: `${quoted(text)} is neither a colour nor one of the settings ${listed(['name', 'edge', 'start'])}.`,
    remedy:
      'The legend comes first, one colour a line, such as "b #1f6fb2 lake blue"; then a blank line, then the rows.',
  });
}

function knows(legend: Legend, key: string): boolean {
  return legend.placeOf.has(key.codePointAt(0) as number);
}

function set(settings: Settings, word: string, value: string, line: Line): void {
  const setting = word.toLowerCase() as keyof Settings;
  if (settings[setting] !== undefined) {
    stop(line, 1, {
      code: 'setting-twice',
      what: `The setting ${setting} is given twice.`,
      remedy: 'Remove one of the two lines.',
    });
  }
  if (setting === 'name') {
    const name = tidyName(value);
    const breach = badName(name);
    if (breach !== undefined) stop(line, 1, breach);
    settings.name = name;
  } else if (setting === 'edge') settings.edge = oneOf(EDGES, setting, value, line);
  else settings.start = oneOf(STARTS, setting, value, line);
}

function oneOf<T extends string>(
  words: readonly T[],
  setting: string,
  value: string,
  line: Line,
): T {
  const word = words.find((candidate) => candidate === value.toLowerCase());
  if (word !== undefined) return word;
  return stop(line, 1, {
    code: 'bad-setting',
    what: `The setting ${setting} cannot be ${quoted(value)}.`,
    remedy: `Write ${listed(
      words.map((candidate) => `"${setting} ${candidate}"`),
      'or',
    )}.`,
  });
}

function stop(line: Line, column: number | undefined, breach: Breach): never {
  const place = column === undefined ? { line: line.number } : { line: line.number, column };
  throw new InputError(breach.code, breach.what, place, breach.remedy);
}
