import type { Project } from '../project/project.js';
import { CELL_NAMES, cellsOf, headOf, readHead, readProject } from './project-record.js';

/**
 * What is not kept yet when a page is left. Nothing that takes time is seen through then, a
 * database least of all; local storage is the one that takes what it is given at once. It has
 * little room: the very largest charts do not fit, and only they lose their last quarter second.
 */
export interface LeftWork {
  readonly project: Project;
  /** The revision that it was made from. */
  readonly base: number;
  /** The `changed` of what the page had sent to be kept before, without an answer. */
  readonly sent: number | null;
}

const PLACE = 'halfhitch.left/';

/** Lifts bytes out of the characters that would be written out at length: six in place of one. */
const LIFT = 0x30;

export function leftPlace(window: string, id: string): string {
  return `${PLACE}${window}/${id}`;
}

/** @param window the name of the page that is left */
export function leaveWork(window: string, { project, base, sent }: LeftWork): void {
  const drawn = Object.entries(cellsOf(project)).map(([name, bytes]) => [name, textOf(bytes)]);
  const record = {
    id: project.id,
    base,
    sent,
    head: headOf(project, base),
    ...(Object.fromEntries(drawn) as Record<string, string>),
  };
  try {
    localStorage.setItem(leftPlace(window, project.id), JSON.stringify(record));
  } catch {
    // No room, or no storage: then what was kept last is what there is.
  }
}

/** What pages left, by its place; null of what can no longer be read. */
export function leftWork(): [string, LeftWork | null][] {
  try {
    return Object.keys(localStorage)
      .filter((place) => place.startsWith(PLACE))
      .map((place) => [place, readLeft(localStorage.getItem(place))]);
  } catch {
    return [];
  }
}

export function forgetLeft(place: string): void {
  try {
    localStorage.removeItem(place);
  } catch {
    // It is taken for what was kept when it is next come upon.
  }
}

/** Calls when another page has left something. @returns what stops it */
export function heardOfLeft(call: () => void): () => void {
  const onStorage = ({ key, newValue }: StorageEvent): void => {
    if (key?.startsWith(PLACE) && newValue !== null) call();
  };
  globalThis.addEventListener?.('storage', onStorage);
  return () => globalThis.removeEventListener?.('storage', onStorage);
}

function readLeft(text: string | null): LeftWork | null {
  try {
    const left = JSON.parse(text ?? 'null') as Record<string, unknown>;
    const { id, base, sent } = left;
    if (typeof id !== 'string' || typeof base !== 'number') return null;
    const record = Object.fromEntries(
      CELL_NAMES.flatMap((name) => {
        const text = left[name];
        return typeof text === 'string' ? [[name, bytesOf(text)]] : [];
      }),
    );
    return {
      project: readProject(id, readHead(left['head']), record),
      base,
      sent: typeof sent === 'number' ? sent : null,
    };
  } catch {
    return null;
  }
}

function textOf(bytes: Uint8Array): string {
  const parts: string[] = [];
  // Not all at once: there is a limit to how many arguments a call has.
  for (let at = 0; at < bytes.length; at += 8192) {
    parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192).map((byte) => byte + LIFT)));
  }
  return parts.join('');
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0) - LIFT);
}
