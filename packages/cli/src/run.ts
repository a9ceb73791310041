import { InputError } from '@halfhitch/core';
import { CommanderError } from 'commander';
import { ExitCode } from './exit-code.js';
import { OutputGone } from './files/write-output.js';
import { createProgram } from './program.js';
import { say } from './say.js';

/** Runs one command line; what it answers is the exit code. Nothing is thrown. */
export async function run(words: readonly string[]): Promise<ExitCode> {
  // A reader that stops early, such as `head`, is no fault; see write-output.ts.
  process.stdout.on('error', () => {});
  let code: ExitCode = ExitCode.fine;
  try {
    const program = createProgram((result) => {
      code = result;
    });
    await program.parseAsync(words, { from: 'user' });
    return code;
  } catch (error) {
    return failed(error);
  }
}

function failed(error: unknown): ExitCode {
  if (error instanceof OutputGone) return ExitCode.fine;
  if (error instanceof CommanderError) {
    // Its own codes are 0 for help and version, and 1 for every misuse.
    return error.exitCode === 0 ? ExitCode.fine : ExitCode.unusable;
  }
  if (error instanceof InputError) say(error.message);
  else {
    const what = error instanceof Error ? error.message : String(error);
    say(
      `This should not have happened: ${what.split('\n')[0]} Please report it to Halfhitch's makers, with the file and the command.`,
    );
  }
  return ExitCode.unusable;
}
