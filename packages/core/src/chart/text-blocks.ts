import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import { type Line, linesOf } from './text-lines.js';

/** Lines that follow each other without a blank one. */
export type Block = readonly [Line, ...Line[]];

/** What a text may hold, and what it is called in messages. */
export interface BlockLimits {
  readonly blocks: number;
  /** Lines of one block. */
  readonly rows: number;
  /** "A chart" */
  readonly noun: string;
  /** What comes before anything that is too much: "legend and rows". */
  readonly parts: string;
}

/**
 * The blocks of a text, which blank lines part.
 *
 * @throws InputError when there are more of them, or one is longer, than the limits allow
 */
export function blocksOf(text: string, { blocks: most, rows, noun, parts }: BlockLimits): Block[] {
  const blocks: [Line, ...Line[]][] = [];
  let block: Line[] | null = null;
  for (const line of linesOf(text)) {
    if (line.text === '') {
      block = null;
    } else if (block === null) {
      if (blocks.length === most) tooManyBlocks(line, parts);
      const begun: [Line, ...Line[]] = [line];
      blocks.push(begun);
      block = begun;
    } else {
      if (block.length === rows) {
        throw new InputError(
          'too-many-rows',
          `There are more than ${rows} lines in one block.`,
          { line: line.number },
          `${noun} can have at most ${rows} rows.`,
        );
      }
      block.push(line);
    }
  }
  return blocks;
}

function tooManyBlocks(line: Line, parts: string): never {
  throw new InputError(
    'too-many-blocks',
    `After ${parts} nothing more can follow, but here stands ${quoted(line.text)}.`,
    { line: line.number },
    'Remove it, or remove the blank line that parts the rows.',
  );
}
