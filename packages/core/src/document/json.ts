import { InputError } from '../errors.js';
import { numberEnd } from './number-end.js';
import { placeIn } from './place.js';
import { listed, quoted } from './quote.js';

const DEEPEST = 64;
const WORDS: Readonly<Record<string, string>> = { t: 'true', f: 'false', n: 'null' };
/** No object of ours has nearly as many. */
const MOST_PROPERTIES = 1_000;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;
const COLON = 0x3a;
const OPEN = { object: 0x7b, array: 0x5b } as const;
const CLOSE = { object: 0x7d, array: 0x5d } as const;

/** Where the values of an object begin in its text, by property. */
export type Properties = ReadonlyMap<string, number>;

/**
 * Reads JSON (RFC 8259) piece by piece as its caller asks for it. `JSON.parse` would tell neither
 * line nor column in every browser, and would build hundreds of megabytes of objects from a long
 * plan, or of nothing but brackets from a hostile file, before anything could be checked.
 *
 * Nothing here recurses. Every fault is an InputError with line, column and path.
 */
export class JsonText {
  readonly text: string;
  private at = 0;
  private readonly path: (string | number)[] = [];

  constructor(text: string) {
    this.text = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  }

  /**
   * Walks over the one object the text holds, checks that all of it is well-formed, and says
   * where the value of each property begins.
   */
  outline(): Properties {
    const places = new Map<string, number>();
    this.object((key) => {
      places.set(key, this.at);
      this.skip();
    });
    this.blank();
    if (this.at < this.text.length) {
      this.fail('json-syntax', 'Something follows the end of the document.', 'Remove it.');
    }
    return places;
  }

  /** Reads the value of a property found by `outline`. */
  property<T>(key: string, at: number, read: () => T): T {
    this.at = at;
    this.path.length = 0;
    this.path.push(key);
    const value = read();
    this.path.length = 0;
    return value;
  }

  /** Reads an object; `read` must read the value of every property it is told of. */
  object(read: (key: string) => void): void {
    this.expect(OPEN.object, 'an object in braces');
    const seen: string[] = [];
    if (this.closes(CLOSE.object)) return;
    do {
      this.blank();
      const start = this.at;
      const key = this.string('a property name in double quotes');
      if (seen.includes(key)) {
        this.at = start;
        this.fail('json-twice', `The property ${quoted(key)} is given twice.`, 'Remove one.');
      }
      if (seen.length === MOST_PROPERTIES) {
        this.fail(
          'json-properties',
          `An object has more than ${MOST_PROPERTIES} properties.`,
          'Check that this is the file you meant.',
        );
      }
      seen.push(key);
      this.expect(COLON, 'a colon after the property name');
      this.path.push(key);
      this.blank();
      read(key);
      this.path.pop();
    } while (this.goesOn(CLOSE.object));
  }

  /** Reads an array; `read` must read each item. Returns how many there were. */
  array(read: (index: number) => void): number {
    this.expect(OPEN.array, 'an array in brackets');
    if (this.closes(CLOSE.array)) return 0;
    let index = 0;
    do {
      this.path.push(index);
      this.blank();
      read(index++);
      this.path.pop();
    } while (this.goesOn(CLOSE.array));
    return index;
  }

  string(wanted = 'a text in double quotes'): string {
    this.blank();
    const start = this.at;
    if (this.text.charCodeAt(start) !== QUOTE) this.unexpected(wanted);
    const escaped = this.skipString();
    const end = this.at;
    if (escaped) return JSON.parse(this.text.slice(start, end)) as string;
    return this.text.slice(start + 1, end - 1);
  }

  /** A whole number from `least` to `most`. */
  integer(least: number, most: number): number {
    this.blank();
    const start = this.at;
    const end = numberEnd(this.text, start);
    const wanted = `a whole number from ${least} to ${most}`;
    if (end < 0) return this.unexpected(wanted);
    const token = this.text.slice(start, end);
    const value = Number(token);
    if (!Number.isInteger(value) || value < least || value > most) {
      this.fail('json-value', `Here stands ${quoted(token).slice(1, -1)}.`, `Write ${wanted}.`);
    }
    this.at = end;
    return value;
  }

  /** One of a few words. */
  word<T extends string>(words: readonly T[]): T {
    this.blank();
    const start = this.at;
    const isText = this.text.charCodeAt(start) === QUOTE;
    const found = isText ? this.string() : '';
    for (const word of words) if (isText && word === found) return word;
    this.at = start;
    const wanted = listed(words.map(quoted), 'or');
    if (!isText) return this.unexpected(wanted);
    return this.fail('json-value', `Here stands ${quoted(found)}.`, `Write ${wanted}.`);
  }

  /** The text of the next value as it stands, for a message. */
  glimpse(): string {
    this.blank();
    const start = this.at;
    const glimpsed = this.text.slice(start, start + 40).split(/[\n\r,}\]]/, 1)[0] ?? '';
    return glimpsed.trim();
  }

  /** Goes past one value of any kind. */
  skip(): void {
    const closers: number[] = [];
    for (;;) {
      this.blank();
      const code = this.text.charCodeAt(this.at);
      if (code === OPEN.object || code === OPEN.array) {
        this.at++;
        const closer = code === OPEN.object ? CLOSE.object : CLOSE.array;
        if (!this.closes(closer)) {
          if (closers.length === DEEPEST) {
            this.fail(
              'json-nesting',
              `Brackets are nested more than ${DEEPEST} deep.`,
              'Check that this is the file you meant.',
            );
          }
          closers.push(closer);
          if (code === OPEN.object) this.skipKey();
          continue;
        }
      } else if (code === QUOTE) this.skipString();
      else this.skipPlain();
      // The value may be the last of one or more brackets.
      for (;;) {
        const closer = closers.at(-1);
        if (closer === undefined) return;
        if (this.goesOn(closer)) {
          if (closer === CLOSE.object) this.skipKey();
          break;
        }
        closers.pop();
      }
    }
  }

  /** The place the reader has come to, to go back to for a message. */
  get mark(): number {
    return this.at;
  }

  fail(code: string, what: string, remedy: string, at = this.at): never {
    const path = this.path
      .map((part) => (typeof part === 'number' ? `[${part}]` : `.${part}`))
      .join('');
    const place = placeIn(this.text, at);
    throw new InputError(
      code,
      what,
      path === '' ? place : { ...place, path: path.slice(1, 200) },
      remedy,
    );
  }

  private skipKey(): void {
    this.blank();
    if (this.text.charCodeAt(this.at) !== QUOTE)
      this.unexpected('a property name in double quotes');
    this.skipString();
    this.expect(COLON, 'a colon after the property name');
  }

  /** Goes past a string and says whether it holds a backslash. */
  private skipString(): boolean {
    const { text } = this;
    let escaped = false;
    for (let i = this.at + 1; ; i++) {
      const code = text.charCodeAt(i);
      if (code === QUOTE) {
        this.at = i + 1;
        return escaped;
      }
      if (code === BACKSLASH) {
        escaped = true;
        i = this.escapeEnd(i);
      } else if (!(code >= 0x20)) {
        this.fail(
          'json-syntax',
          Number.isNaN(code) ? 'The file ends inside a text.' : 'A line ends inside a text.',
          'Close the text with a double quote; write a line break inside it as \\n.',
          i,
        );
      }
    }
  }

  private escapeEnd(backslash: number): number {
    const letter = this.text[backslash + 1] ?? '';
    if (letter !== '' && '"\\/bfnrt'.includes(letter)) return backslash + 1;
    if (letter === 'u' && /^[0-9a-fA-F]{4}$/.test(this.text.slice(backslash + 2, backslash + 6))) {
      return backslash + 5;
    }
    return this.fail(
      'json-syntax',
      `The text has the escape ${quoted(`\\${letter}`)}, which JSON does not know.`,
      'Write a backslash itself as two backslashes.',
      backslash,
    );
  }

  private skipPlain(): void {
    const word = WORDS[this.text[this.at] ?? ''];
    if (word !== undefined && this.text.startsWith(word, this.at)) {
      this.at += word.length;
      return;
    }
    const end = numberEnd(this.text, this.at);
    if (end < 0) this.unexpected('a value');
    this.at = end;
  }

  private expect(mark: number, wanted: string): void {
    this.blank();
    if (this.text.charCodeAt(this.at) !== mark) this.unexpected(wanted);
    this.at++;
  }

  private closes(mark: number): boolean {
    this.blank();
    if (this.text.charCodeAt(this.at) !== mark) return false;
    this.at++;
    return true;
  }

  /** After a value: true at a comma, false at the closing bracket. */
  private goesOn(closer: number): boolean {
    this.blank();
    const mark = this.text.charCodeAt(this.at);
    if (mark !== COMMA && mark !== closer) {
      this.unexpected(`a comma or ${String.fromCharCode(closer)}`);
    }
    this.at++;
    return mark === COMMA;
  }

  private blank(): void {
    const { text } = this;
    let code = text.charCodeAt(this.at);
    while (code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09) {
      code = text.charCodeAt(++this.at);
    }
  }

  private unexpected(wanted: string): never {
    if (this.at >= this.text.length) {
      return this.fail(
        'json-syntax',
        `The file ends where ${wanted} should stand.`,
        'Check that the whole file was saved.',
      );
    }
    return this.fail(
      'json-syntax',
      `Here stands ${quoted(this.glimpse() || this.text[this.at] || '')}.`,
      `Write ${wanted} here.`,
    );
  }
}
