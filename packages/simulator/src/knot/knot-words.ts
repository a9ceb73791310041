import { changesPlaces, halvesOf, type KnotKind, startSide } from '@halfhitch/core';
import { STAGE_ENDS } from '@halfhitch/geometry/knot';
import { IN_ENGLISH, type Words } from '../messages/words.js';

export interface KnotWords {
  /** "First half: forward half hitch" */
  readonly heading: string;
  /** The moves of this half in order, each a sentence. */
  readonly moves: readonly string[];
  /** Place in `moves` of the one being made; -1 before the first and after the last half. */
  readonly current: number;
  /** What a screen reader says now. */
  readonly said: string;
}

export interface KnotNames {
  /** What the tying string is called, such as "the lake blue lead". */
  readonly tying: string;
  /** What the held string is called, such as "base string 4". */
  readonly held: string;
  /** The same where a language asks for another form; default: the same as those. */
  readonly tyingFirst?: string;
  readonly heldAt?: string;
}

/** What strings without a name are called. */
export function plainNames(words: Words, tying: string, held: string): KnotNames {
  return {
    tying: tying === '' ? words('name.tying') : tying,
    tyingFirst: tying === '' ? words('name.tyingFirst') : capital(tying),
    held: held === '' ? words('name.held') : held,
    heldAt: held === '' ? words('name.heldAt') : held,
  };
}

/** The four moves of a half hitch; the last says where the string goes from there. */
export function movesOfHalf(
  kind: KnotKind,
  half: 0 | 1,
  names: KnotNames,
  words: Words = IN_ENGLISH,
): string[] {
  const halves = halvesOf(kind);
  const forward = halves[half] === 'forward';
  const values = {
    tying: names.tying,
    held: names.held,
    heldAt: names.heldAt ?? names.held,
    from: words(forward ? 'side.left' : 'side.right'),
    to: words(forward ? 'side.right' : 'side.left'),
  };
  const same = changesPlaces(kind);
  const leave =
    half === 0
      ? same
        ? 'knot.snugOverBar'
        : 'knot.snugAcross'
      : same
        ? 'knot.snugChanged'
        : 'knot.snugBack';
  return [
    words(half === 1 && same ? 'knot.barAgain' : 'knot.bar', values),
    words('knot.behind', values),
    words('knot.through', values),
    words(leave, values),
  ];
}

/** What is done at a position of a knot, 0 to 2. */
export function knotWords(
  kind: KnotKind,
  position: number,
  names: KnotNames,
  words: Words = IN_ENGLISH,
): KnotWords {
  const named = words(`kind.${kind}`);
  if (position <= 0) {
    return {
      heading: capital(words('knot.title', { kind: named })),
      moves: movesOfHalf(kind, 0, names, words),
      current: -1,
      said: words('knot.ready', {
        kind: named,
        tyingFirst: names.tyingFirst ?? capital(names.tying),
        heldAt: names.heldAt ?? names.held,
        side: words(`side.${startSide(kind)}`),
      }),
    };
  }
  // A whole number is the end of a half, not the beginning of the next.
  const half = position > 1 ? 1 : 0;
  const within = position - half;
  const moves = movesOfHalf(kind, half, names, words);
  const current =
    within <= STAGE_ENDS.bar + 1e-9
      ? 0
      : within <= STAGE_ENDS['turned-behind'] + 1e-9
        ? 1
        : within <= STAGE_ENDS['through-loop'] + 1e-9
          ? 2
          : 3;
  const way = words(`half.${halvesOf(kind)[half]}`);
  const said = words(half === 0 ? 'knot.saidFirst' : 'knot.saidSecond', {
    way,
    move: current + 1,
    text: moves[current] ?? '',
  });
  return {
    heading: words(half === 0 ? 'knot.firstHalf' : 'knot.secondHalf', { way }),
    moves,
    current,
    said: position >= 2 ? `${said} ${words('knot.done', { kind: named })}` : said,
  };
}

/** The same four moves taken back, the last one first. */
function undoingOfHalf(kind: KnotKind, half: 0 | 1, names: KnotNames, words: Words): string[] {
  const forward = halvesOf(kind)[half] === 'forward';
  const values = {
    tying: names.tying,
    held: names.held,
    heldAt: names.heldAt ?? names.held,
    from: words(forward ? 'side.left' : 'side.right'),
    to: words(forward ? 'side.right' : 'side.left'),
  };
  return [
    words('undo.loosen', values),
    words('undo.through', values),
    words('undo.behind', values),
    words('undo.bar', values),
  ];
}

/** What is taken back at a position of a knot, which goes from 2 to 0. */
export function undoingWords(
  kind: KnotKind,
  position: number,
  names: KnotNames,
  words: Words = IN_ENGLISH,
): KnotWords {
  const half = position >= 1 ? 1 : 0;
  const within = position - half;
  const moves = undoingOfHalf(kind, half, names, words);
  const way = words(`half.${halvesOf(kind)[half]}`);
  const heading = words(half === 0 ? 'undo.firstHalf' : 'undo.secondHalf', { way });
  if (position >= 2) {
    const said = words('undo.ready', { kind: words(`kind.${kind}`) });
    return { heading, moves, current: -1, said };
  }
  // At a still, the move that began there has just been taken back.
  const current =
    within < STAGE_ENDS.bar - 1e-9
      ? 3
      : within < STAGE_ENDS['turned-behind'] - 1e-9
        ? 2
        : within < STAGE_ENDS['through-loop'] - 1e-9
          ? 1
          : 0;
  const said = words(half === 0 ? 'undo.saidFirst' : 'undo.saidSecond', {
    way,
    move: current + 1,
    text: moves[current] ?? '',
  });
  return {
    heading,
    moves,
    current,
    said: position <= 0 ? `${said} ${words('undo.done')}` : said,
  };
}

/** A whole half in one go, for when moves pass too fast to be said one by one. */
export function halfInWords(
  kind: KnotKind,
  half: 0 | 1,
  names: KnotNames,
  words: Words = IN_ENGLISH,
): string {
  return words(half === 0 ? 'knot.wholeFirst' : 'knot.wholeSecond', {
    way: words(`half.${halvesOf(kind)[half]}`),
    text: movesOfHalf(kind, half, names, words).join(' '),
  });
}

export function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
