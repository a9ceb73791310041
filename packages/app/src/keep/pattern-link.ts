import {
  InputError,
  type PatternReading,
  readChartDocument,
  readDiagonalDocument,
} from '@halfhitch/core';
import { deflate, Inflate } from 'pako';
import { figures } from '../view/figures.js';
import { LINK_MARK } from './link-mark.js';

/** Grows when earlier versions of the app could not read the links any more. */
const LINK_VERSION = 1;

/** Stated limits: of the fragment, in characters, and of the document inside, in bytes. */
export const LINK_LIMITS = {
  /** Every browser and nearly every messenger passes on as much. */
  characters: 16_000,
  document: 2 * 1024 * 1024,
} as const;

/** How the document of a diagonal pattern begins in a link. */
const DIAGONAL = '{"format":"halfhitch-diagonal",';

const AS_FILE = 'Export the project as a file, and send that.';

/**
 * A fragment (RFC 3986, 3.5) that carries a pattern: `pattern=1.` and its document, without
 * blanks, in zlib's format (RFC 1950), as base64url (RFC 4648, 5). A fragment is never sent to a
 * server.
 *
 * @param document of a chart or of a diagonal pattern
 * @throws InputError when it would be longer than links may be
 */
export function linkFragment(document: string): string {
  const json = JSON.stringify(JSON.parse(document));
  const bytes = new TextEncoder().encode(json);
  if (bytes.length > LINK_LIMITS.document) throw tooLarge();
  const fragment = `${LINK_MARK}${LINK_VERSION}.${toBase64Url(deflate(bytes, { level: 9 }))}`;
  if (fragment.length > LINK_LIMITS.characters) {
    throw new InputError(
      'link-too-long',
      `The link would have ${figures(fragment.length)} characters; the most is ${figures(LINK_LIMITS.characters)}.`,
      {},
      AS_FILE,
    );
  }
  return fragment;
}

/**
 * The chart or the diagonal pattern that a link carries.
 *
 * @param hash as the address has it, with the number sign
 * @throws InputError, also for whatever was not made by `linkFragment`
 */
export function readLink(hash: string): PatternReading {
  try {
    return readFragment(hash.slice(1 + LINK_MARK.length));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const link = 'The link cannot be opened.';
    throw new InputError(error.code, `${link} ${error.what}`, {}, error.remedy);
  }
}

function readFragment(fragment: string): PatternReading {
  if (fragment.length + LINK_MARK.length > LINK_LIMITS.characters) {
    throw new InputError(
      'link-too-long',
      `It has ${figures(fragment.length)} characters; the most is ${figures(LINK_LIMITS.characters)}.`,
      {},
      'Ask for the project as a file.',
    );
  }
  const [, version, data] = /^(\d{1,6})\.([A-Za-z0-9_-]*)$/.exec(decoded(fragment)) ?? [];
  if (version === undefined || data === undefined) throw damaged();
  if (Number(version) > LINK_VERSION) {
    throw new InputError(
      'link-later',
      'It was made by a later version of Halfhitch.',
      {},
      'Load this page anew to get that version, or ask for the pattern as a document.',
    );
  }
  if (Number(version) !== LINK_VERSION) throw damaged();
  const text = unpacked(fromBase64Url(data));
  try {
    return readDocument(text);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw /version/.test(error.code) ? error : damaged();
  }
}

function readDocument(text: string): PatternReading {
  return text.startsWith(DIAGONAL)
    ? { kind: 'diagonal', pattern: readDiagonalDocument(text), notices: [] }
    : { kind: 'alpha', ...readChartDocument(text) };
}

/** Some programs write characters of a link as per cent and number. */
function decoded(fragment: string): string {
  try {
    return decodeURIComponent(fragment).trim();
  } catch {
    return fragment;
  }
}

/** Unpacked a little at a time, so that no link can fill the memory. */
function unpacked(bytes: Uint8Array): string {
  const parts: Uint8Array[] = [];
  let length = 0;
  const inflate = new Inflate({ chunkSize: 64 * 1024 });
  inflate.onData = (chunk) => {
    length += chunk.length;
    if (length > LINK_LIMITS.document) throw tooLarge();
    parts.push(chunk as Uint8Array);
  };
  inflate.push(bytes, true);
  if (inflate.err !== 0 || !inflate.ended) throw damaged();
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(whole);
  } catch {
    throw damaged();
  }
}

function damaged(): InputError {
  return new InputError(
    'link-damaged',
    'It is not whole, or was changed on its way.',
    {},
    'Copy all of it again, or ask for the pattern as a file.',
  );
}

function tooLarge(): InputError {
  return new InputError(
    'link-too-large',
    'The pattern is larger than a link may carry.',
    {},
    AS_FILE,
  );
}

function toBase64Url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary)
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/={1,2}$/, '');
}

function fromBase64Url(text: string): Uint8Array {
  try {
    const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  } catch {
    throw damaged();
  }
}
