import { type Block, blocksOf as textBlocks } from '../../chart/text-blocks.js';
import type { Line } from '../../chart/text-lines.js';
import { FILE_LIMITS, sizeInWords } from '../../document/limits.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';

export type { Block };

/** The blocks of a text, which blank lines part: at least one, and at most as many as asked for. */
export function blocksOf(text: string, most: number): readonly [Block, ...Block[]] {
  if (text.length > FILE_LIMITS.text) throw tooLong('The text');
  const [head, ...rest] = textBlocks(text, {
    blocks: most,
    rows: DIAGONAL_LIMITS.maxRows,
    noun: 'A diagonal pattern',
    parts: 'the rows',
  });
  if (head === undefined) {
    throw new InputError(
      'empty',
      'The file is empty.',
      { line: 1 },
      'It has a legend with the line "pattern diagonal", a blank line, and what follows.',
    );
  }
  return [head, ...rest];
}

export function tooLong(what: string): InputError {
  return new InputError(
    'file-too-large',
    `${what} is too long.`,
    {},
    `A diagonal pattern can have at most ${sizeInWords(FILE_LIMITS.text)}.`,
  );
}

export function lastOf(block: Block): Line {
  return block.at(-1) ?? block[0];
}
