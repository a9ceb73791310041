import { once } from 'node:events';
import { type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { InputError } from '@halfhitch/core';
import { systemError } from './system-errors.js';

/** Whoever was to read the output has gone, so there is nothing left to do. */
export class OutputGone extends Error {}

export type Piece = string | Uint8Array;

const CHUNK = 1 << 16;

/** Writes pieces as they are made to a file, or to standard output for `-`. */
export async function writeOutput(file: string, pieces: Iterable<Piece>): Promise<void> {
  if (file === '-') return toStandardOutput(pieces);
  try {
    await toFile(file, pieces);
  } catch (error) {
    throw systemError(error, file, 'writing');
  }
}

/**
 * Refuses an output that is one of the inputs, under whatever name: it would be lost.
 *
 * @throws InputError naming the output
 */
export async function keepInputs(output: string, inputs: readonly string[]): Promise<void> {
  if (output === '-') return;
  const target = await stat(output).catch(() => null);
  if (target === null) return;
  for (const input of inputs) {
    if (input === '-') continue;
    const source = await stat(input).catch(() => null);
    if (source === null || source.dev !== target.dev || source.ino !== target.ino) continue;
    throw new InputError(
      'output-is-input',
      'This is the file that is read; writing it would lose it.',
      { file: output },
      'Choose another name with -o.',
    );
  }
}

async function toStandardOutput(pieces: Iterable<Piece>): Promise<void> {
  const { stdout } = process;
  for (const chunk of chunked(pieces)) {
    if (stdout.destroyed || stdout.errored) throw new OutputGone();
    if (stdout.write(chunk)) continue;
    try {
      await once(stdout, 'drain');
    } catch (error) {
      throw outputFailed(error);
    }
  }
  // What is still under way must arrive, or its loss be known, before the exit code is given.
  await new Promise<void>((resolve, reject) => {
    stdout.write('', (error) => (error ? reject(outputFailed(error)) : resolve()));
  });
}

function outputFailed(error: unknown): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EPIPE' || code === 'ECONNRESET' || code === 'ERR_STREAM_DESTROYED') {
    return new OutputGone();
  }
  return systemError(error, 'standard output', 'writing');
}

/** Written beside its place and moved there when complete: a failure leaves what was there. */
async function toFile(file: string, pieces: Iterable<Piece>): Promise<void> {
  const there = await stat(file).catch(() => null);
  // A device or a pipe is written to, not replaced.
  if (there !== null && !there.isFile()) return fill(await open(file, 'w'), pieces);
  const beside = join(dirname(file), `.${basename(file)}.${process.pid}.part`);
  const handle = await open(beside, 'wx', there === null ? 0o666 : there.mode & 0o777);
  try {
    await fill(handle, pieces);
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

async function fill(handle: FileHandle, pieces: Iterable<Piece>): Promise<void> {
  try {
    for (const chunk of chunked(pieces)) await handle.writeFile(chunk);
  } finally {
    await handle.close();
  }
}

/** Joins small pieces of text, so that a write is worth its cost. */
function* chunked(pieces: Iterable<Piece>): Generator<Piece, void, undefined> {
  let waiting: string[] = [];
  let length = 0;
  for (const piece of pieces) {
    if (typeof piece !== 'string') {
      yield piece;
      continue;
    }
    waiting.push(piece);
    length += piece.length;
    if (length < CHUNK) continue;
    yield waiting.join('');
    waiting = [];
    length = 0;
  }
  if (length > 0) yield waiting.join('');
}
