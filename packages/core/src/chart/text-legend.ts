import { listed, quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import {
  type ChartColour,
  EDGE_TECHNIQUES,
  type EdgeTechnique,
  START_SIDES,
  type StartSide,
} from './chart.js';
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

/** What a setting can be: one of a few words, a name, or a whole number. */
export type SettingRule =
  | readonly string[]
  | 'name'
  | { readonly least: number; readonly most: number };

/** The settings a legend may have, by their words, which have several letters. */
export type SettingRules = ReadonlyMap<string, SettingRule>;

const CHART_RULES: SettingRules = new Map<string, SettingRule>([
  ['name', 'name'],
  ['edge', EDGE_TECHNIQUES],
  ['start', START_SIDES],
]);

interface Settings {
  name?: string;
  edge?: EdgeTechnique;
  start?: StartSide;
}

/** Reads the first block of a text chart: colours and settings. */
export function readLegend(lines: readonly Line[]): { legend: Legend; settings: Settings } {
  const { legend, settings } = readLegendBy(CHART_RULES, lines);
  return { legend, settings: Object.fromEntries(settings) };
}

/** Reads a legend of which the settings follow other rules than those of a chart. */
export function readLegendBy(
  rules: SettingRules,
  lines: readonly Line[],
): { legend: Legend; settings: ReadonlyMap<string, string> } {
  const legend = new Legend();
  const settings = new Map<string, string>();
  const pattern = new RegExp(
    `^(?<word>${[...rules.keys()].join('|')})(?:\\s*[=:]\\s*|\\s+|$)(?<value>.*)$`,
    'iu',
  );
  for (const line of lines) {
    if (line.text.length > LONGEST_LINE) {
      stop(line, 1, {
        code: 'line-too-long',
        what: `A line of the legend has more than ${LONGEST_LINE} characters.`,
        remedy: 'A text chart begins with its legend, such as "b #1f6fb2 lake blue".',
      });
    }
    const text = line.text.trimStart().replace(/\t+/g, ' ');
    const setting = pattern.exec(text)?.groups;
    if (setting !== undefined) {
      const word = (setting['word'] as string).toLowerCase();
      if (settings.has(word)) twice(word, line);
      settings.set(word, settingIn(rules, word, setting['value'] as string, line));
      continue;
    }
    const colour = readColour(text, line, legend, rules);
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

function readColour(text: string, line: Line, legend: Legend, rules: SettingRules): ChartColour {
  for (const pattern of COLOUR_LINES) {
    const found = pattern.exec(text)?.groups;
    const hex = readHex(found?.['hex'] ?? '');
    if (found === undefined || hex === undefined) continue;
    return { key: found['key'] as string, hex, name: tidyName(found['name'] ?? '') };
  }
  return refuse(text, line, legend, rules);
}

/** Says what a line is that is neither a colour nor a setting. */
function refuse(text: string, line: Line, legend: Legend, rules: SettingRules): never {
  const diagonal = /^(?<noun>pattern|picture)(?:\s*[=:]\s*|\s+)diagonal$/iu.exec(text)?.groups;
  if (diagonal !== undefined) {
    stop(line, 1, {
      code: 'diagonal',
      what: `This is a diagonal ${(diagonal['noun'] as string).toLowerCase()}.`,
      remedy: 'Give it where one is asked for, or remove this line.',
    });
  }
  if (legend.colours.length > 0 && [...text].every((key) => knows(legend, key))) {
    stop(line, 1, {
      code: 'blank-line-missing',
      what: 'This looks like a row of knots, but the legend has not ended.',
      remedy: 'Leave one line blank between the legend and the rows.',
    });
  }
  const second = /^\S(?:\s*[=:])?\s*(?<given>\S+)/u.exec(text);
  const given = second?.groups?.['given'];
  const separated = /^\S(?:\s|[=:])/u.test(text);
  if (given !== undefined && (separated || given.startsWith('#'))) {
    const hash = /#[^\s]*/u.exec(text.slice(1));
    const bad = hash?.[0] ?? given;
    stop(line, [...line.text.slice(0, line.text.indexOf(bad, 1))].length + 1, badHex(bad));
  }
  return stop(line, 1, {
    code: 'bad-legend',
    what: `${quoted(text)} is neither a colour nor one of the settings ${listed([...rules.keys()])}.`,
    remedy:
      'The legend comes first, one colour a line, such as "b #1f6fb2 lake blue"; then a blank line, then the rows.',
  });
}

function knows(legend: Legend, key: string): boolean {
  return legend.placeOf.has(key.codePointAt(0) as number);
}

function twice(word: string, line: Line): never {
  return stop(line, 1, {
    code: 'setting-twice',
    what: `The setting ${word} is given twice.`,
    remedy: 'Remove one of the two lines.',
  });
}

function settingIn(rules: SettingRules, word: string, value: string, line: Line): string {
  const rule = rules.get(word) ?? [];
  if (rule === 'name') {
    const name = tidyName(value);
    const breach = badName(name);
    return breach === undefined ? name : stop(line, 1, breach);
  }
  const bad = (remedy: string): never =>
    stop(line, 1, {
      code: 'bad-setting',
      what: `The setting ${word} cannot be ${quoted(value)}.`,
      remedy,
    });
  if ('least' in rule) {
    const number = /^[0-9]{1,9}$/.test(value) ? Number(value) : Number.NaN;
    if (number >= rule.least && number <= rule.most) return String(number);
    return bad(`Write a whole number from ${rule.least} to ${rule.most}.`);
  }
  const found = rule.find((candidate) => candidate === value.toLowerCase());
  if (found !== undefined) return found;
  const choices = rule.map((candidate) => `"${word} ${candidate}"`);
  return bad(`Write ${listed(choices, 'or')}.`);
}

function stop(line: Line, column: number | undefined, breach: Breach): never {
  const place = column === undefined ? { line: line.number } : { line: line.number, column };
  throw new InputError(breach.code, breach.what, place, breach.remedy);
}
