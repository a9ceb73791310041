export interface Line {
  /** Counted from 1. */
  readonly number: number;
  /** Without blanks at its end. */
  readonly text: string;
}

/**
 * Lines of a text, however they are ended, and of several blank ones together only the first. One
 * at a time: a file may have millions of them.
 */
export function* linesOf(text: string): Generator<Line> {
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let blank = false;
  for (let number = 1; start <= text.length; number++) {
    let end = start;
    let code = text.charCodeAt(end);
    while (end < text.length && code !== 0x0a && code !== 0x0d) code = text.charCodeAt(++end);
    const line = end === start ? '' : text.slice(start, end).trimEnd();
    if (line !== '' || !blank) yield { number, text: line };
    blank = line === '';
    start = code === 0x0d && text.charCodeAt(end + 1) === 0x0a ? end + 2 : end + 1;
  }
}
