import { type Line, linesOf } from '../../chart/text-lines.js';
import { FILE_LIMITS, sizeInWords } from '../../document/limits.js';
import { quoted } from '../../document/quote.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';

/** Lines that follow each other without a blank one. */
export type Block = readonly [Line, ...Line[]];

/** The blocks of a text, which blank lines part: at least one, and at most as many as asked for. */
export function blocksOf(text: string, most: number): readonly [Block, ...Block[]] {
  if (text.length > FILE_LIMITS.text) throw tooLong('The text');
  const blocks: [Line, ...Line[]][] = [];
  let inBlock = false;
  for (const line of linesOf(text)) {
    if (line.text === '') {
      inBlock = false;
      continue;
    }
    if (!inBlock) {
      if (blocks.length === most) tooManyBlocks(line);
      blocks.push([line]);
      inBlock = true;
      continue;
    }
    const block = blocks.at(-1) as Line[];
    if (block.length === DIAGONAL_LIMITS.maxRows) {
      throw new InputError(
        'too-many-rows',
        `There are more than ${DIAGONAL_LIMITS.maxRows} lines in one block.`,
        { line: line.number },
        `A diagonal pattern can have at most ${DIAGONAL_LIMITS.maxRows} rows.`,
      );
    }
    block.push(line);
  }
  const [head, ...rest] = blocks;
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

function tooManyBlocks(line: Line): never {
  throw new InputError(
    'too-many-blocks',
    `After the rows nothing more can follow, but here stands ${quoted(line.text)}.`,
    { line: line.number },
    'Remove it, or remove the blank line that parts the rows.',
  );
}

export function lastOf(block: Block): Line {
  return block.at(-1) ?? block[0];
}
