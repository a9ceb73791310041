/** What a key asks for while a piece is tied. */
export type TieKey = 'done' | 'back' | 'run' | 'big' | 'say';

const KEYS: Readonly<Record<string, TieKey>> = {
  ' ': 'done',
  Enter: 'done',
  Backspace: 'back',
  r: 'run',
  b: 'big',
  s: 'say',
};

/** Where keys have a meaning of their own. */
const OWN =
  'input, select, textarea, [contenteditable], [role="grid"], halfhitch-row, halfhitch-knot';
/** What Space and Enter press or open. */
const PRESSED = 'button, summary, a[href], label';

/**
 * What a key pressed in the page asks for; null when it is meant for something else.
 *
 * @param letters whether letters ask for anything
 */
export function tieKeyOf(event: KeyboardEvent, letters: boolean): TieKey | null {
  if (event.defaultPrevented || event.repeat) return null;
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const key = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (key === undefined || (!letters && /^[a-z]$/i.test(event.key))) return null;
  const target = event.target instanceof Element ? event.target : null;
  if (target?.closest(OWN)) return null;
  if (key === 'done' && target?.closest(PRESSED)) return null;
  return key;
}
