import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { type CheckOptions, check } from './commands/check.js';
import { PLAN_FORMATS, type PlanCommandOptions, plan } from './commands/plan.js';
import { PICTURE_FORMATS, type RenderOptions, render } from './commands/render.js';
import { type TraceOptions, trace } from './commands/trace.js';
import { type VerifyCommandOptions, verify } from './commands/verify.js';
import type { ExitCode } from './exit-code.js';

const CHART =
  'chart: a PNG picture (one pixel, one knot), a text chart or a chart document; - for standard input';

const NOTES = `
Exit codes: 0 it knots out as drawn, or was done; 1 it does not knot out as drawn;
2 the input cannot be used, or the command was called wrongly.

Knotting strains the hands: rest often, and stop when something hurts. Keep cords away
from small children. Take care with flames and blades when finishing ends.`;

/** The commands and their options. `done` takes the exit code of the command that ran. */
export function createProgram(done: (code: ExitCode) => void): Command {
  const program = new Command('halfhitch')
    .description('Checks, plans and draws charts of hand-knotted thread bracelets.')
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('("halfhitch --help" says how to call it)')
    .addHelpText('after', NOTES)
    .configureOutput({
      outputError: (message, write) => write(message.replace(/^error: /, 'halfhitch: ')),
    })
    .exitOverride();

  const command = (words: string, description: string): Command =>
    program.command(words).description(description);

  planning(command('check', 'Say whether a chart knots out as drawn.').argument('<file>', CHART))
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: CheckOptions) => done(await check(file, options)));

  planning(command('plan', 'Write the instructions, row by row.').argument('<file>', CHART))
    .addOption(
      new Option('-f, --format <format>', 'what to write').choices(PLAN_FORMATS).default('text'),
    )
    .addOption(output('-'))
    .action(async (file: string, options: PlanCommandOptions) => done(await plan(file, options)));

  command('verify', "Run a plan's steps and say whether they knot the chart.")
    .argument('<plan>', 'plan document, as "plan --format json" writes it; - for standard input')
    .requiredOption('-c, --chart <file>', CHART)
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: VerifyCommandOptions) =>
      done(await verify(file, options)),
    );

  planning(command('trace', 'Print one line of JSON for each knot.').argument('<file>', CHART))
    .addOption(output('-'))
    .action(async (file: string, options: TraceOptions) => done(await trace(file, options)));

  planning(
    command('render', 'Draw the knotted result as thread, from its front.').argument(
      '<file>',
      CHART,
    ),
  )
    .addOption(output().makeOptionMandatory())
    .addOption(
      new Option('-f, --format <format>', "kind of picture; by the output's ending").choices(
        PICTURE_FORMATS,
      ),
    )
    .action(async (file: string, options: RenderOptions) => done(await render(file, options)));

  return program;
}

/** Options of every command that makes a plan. */
function planning(command: Command): Command {
  return command
    .addOption(
      new Option(
        '--edge <technique>',
        'edge technique; what the chart asks for, else straight',
      ).choices(['straight', 'wrapped']),
    )
    .addOption(
      new Option(
        '--start <side>',
        'side from which row 1 is knotted; what the chart asks for, else left',
      ).choices(['left', 'right']),
    );
}

function output(standard?: string): Option {
  const option = new Option('-o, --output <file>', 'file to write; - for standard output');
  return standard === undefined ? option : option.default(standard);
}

function version(): string {
  const file = new URL('../package.json', import.meta.url);
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version;
}
