import { createReadStream } from 'node:fs';
import { decodeUtf8, FILE_LIMITS, InputError } from '@halfhitch/core';
import { systemError } from './system-errors.js';

/** How standard input is called in messages. */
const STANDARD_INPUT = 'standard input';

/** The name of an input as messages have it; `-` is standard input. */
export function inputName(file: string): string {
  return file === '-' ? STANDARD_INPUT : file;
}

/** Reads a whole file, or standard input for `-`, but never more than it may have. */
async function readInput(file: string, limit: number): Promise<Uint8Array> {
  const name = inputName(file);
  const chunks: Buffer[] = [];
  let length = 0;
  // Opened and read to the limit, not measured first: a pipe or a device has no size to ask for.
  const stream = file === '-' ? process.stdin : createReadStream(file);
  try {
    for await (const chunk of stream as AsyncIterable<Buffer>) {
      chunks.push(chunk);
      length += chunk.length;
      if (length > limit) {
        throw new InputError(
          'file-too-large',
          `The file is larger than ${limit / (1024 * 1024)} MiB.`,
          { file: name },
          'Check that it is the right one; a chart or plan within the limits is smaller.',
        );
      }
    }
  } catch (error) {
    throw systemError(error, name, 'reading');
  }
  return Buffer.concat(chunks, length);
}

export function readChartBytes(file: string): Promise<Uint8Array> {
  return readInput(file, Math.max(FILE_LIMITS.png, FILE_LIMITS.text));
}

export async function readPlanText(file: string): Promise<string> {
  const bytes = await readInput(file, FILE_LIMITS.plan);
  return inFile(file, () => decodeUtf8(bytes));
}

/** Does something with a file's contents; an error in them names the file. */
export function inFile<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError) || error.place.file !== undefined) throw error;
    throw error.inFile(inputName(file));
  }
}
