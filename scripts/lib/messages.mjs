/** A failure that the person at the keyboard can do something about: shown without a stack. */
export class Refusal extends Error {
  constructor(message, exitCode = 1) {
    super(message);
    this.exitCode = exitCode;
  }
}

/** Progress goes to stderr: stdout belongs to the command that is being run. */
export function say(message) {
  process.stderr.write(`${message}\n`);
}

/** Runs a script's main function; a refusal becomes its message and its exit code. */
export async function runMain(main) {
  try {
    await main(process.argv.slice(2));
  } catch (error) {
    say(error instanceof Refusal ? error.message : (error?.stack ?? String(error)));
    process.exitCode = error instanceof Refusal ? error.exitCode : 1;
  }
}
