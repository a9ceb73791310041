import { readFileSync } from 'node:fs';
import { EDGE_TECHNIQUES, START_SIDES } from '@halfhitch/core';
import { SOLVE_PREFERENCES } from '@halfhitch/core/solve';
import { Command, InvalidArgumentError, Option } from 'commander';
import { type CheckOptions, check } from './commands/check.js';
import { type CutCommandOptions, cut, parseSwatch } from './commands/cut.js';
import { type DiagnoseCommandOptions, diagnosePiece } from './commands/diagnose.js';
import { type EaseCommandOptions, ease } from './commands/ease.js';
import { PLAN_FORMATS, type PlanCommandOptions, plan } from './commands/plan.js';
import { PICTURE_FORMATS, type RenderOptions, render } from './commands/render.js';
import { type SolveCommandOptions, solve } from './commands/solve.js';
import { type TraceOptions, trace } from './commands/trace.js';
import { type VerifyCommandOptions, verify } from './commands/verify.js';
import type { ExitCode } from './exit-code.js';

const CHART =
  'chart: a PNG picture (one pixel, one knot), a text chart or a chart document; - for standard input';
const PATTERN =
  'chart: a PNG picture (one pixel, one knot), a text chart or a chart document; or a diagonal pattern, as text or document; - for standard input';

const ORDER = 'of a diagonal pattern: tell the order of the strings after every row';

const NOTES = `
Exit codes: 0 it knots out as drawn, or was done; 1 it does not knot out as drawn;
2 the input cannot be used, or the command was called wrongly. solve: 0 solved, 1 proven
impossible, 3 stopped at the time limit with the best found.

Knotting strains the hands: rest often, and stop when something hurts. Keep cords away
from small children. Take care with flames and blades when finishing ends.`;

/** The commands and their options. `done` takes the exit code of the command that ran. */
export function createProgram(done: (code: ExitCode) => void): Command {
  const program = new Command('halfhitch')
    .description('Checks, plans and draws patterns of hand-knotted thread bracelets.')
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

  planning(
    command('check', 'Say whether a chart or a diagonal pattern knots out as drawn.').argument(
      '<file>',
      PATTERN,
    ),
  )
    .option('--order', ORDER)
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: CheckOptions) => done(await check(file, options)));

  planning(command('plan', 'Write the instructions, row by row.').argument('<file>', PATTERN))
    .addOption(
      new Option('-f, --format <format>', 'what to write').choices(PLAN_FORMATS).default('text'),
    )
    .addOption(output('-'))
    .action(async (file: string, options: PlanCommandOptions) => done(await plan(file, options)));

  command('verify', "Run a plan's steps and say whether they knot the chart.")
    .argument('<plan>', 'plan document, as "plan --format json" writes it; - for standard input')
    .requiredOption('-c, --chart <file>', PATTERN)
    .option('--order', ORDER)
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: VerifyCommandOptions) =>
      done(await verify(file, options)),
    );

  command('diagnose', 'Say which mistakes explain what is seen of a piece, and how to undo them.')
    .argument(
      '<plan>',
      'plan document, as "plan --format json" writes it, or a diagonal pattern; - for standard input',
    )
    .requiredOption(
      '-s, --seen <file>',
      'rows as they look, ? where you did not look; or a chart or diagonal picture of the piece; - for standard input',
    )
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: DiagnoseCommandOptions) =>
      done(await diagnosePiece(file, options)),
    );

  planning(command('trace', 'Print one line of JSON for each knot.').argument('<file>', PATTERN))
    .addOption(output('-'))
    .action(async (file: string, options: TraceOptions) => done(await trace(file, options)));

  planning(
    command('render', 'Draw the knotted result as thread, from its front.').argument(
      '<file>',
      PATTERN,
    ),
  )
    .addOption(output().makeOptionMandatory())
    .addOption(
      new Option('-f, --format <format>', "kind of picture; by the output's ending").choices(
        PICTURE_FORMATS,
      ),
    )
    .action(async (file: string, options: RenderOptions) => done(await render(file, options)));

  planning(
    command('cut', 'Say how much thread to cut for each string.').argument('<file>', PATTERN),
  )
    .addOption(millimetres('--diameter <mm>', 'thickness of one strand'))
    .addOption(figure('--tex <tex>', 'linear density of one strand'))
    .addOption(figure('--strands <number>', 'strands used together; else 1'))
    .addOption(millimetres('--length <mm>', 'length of the knotted part; the chart is repeated'))
    .addOption(millimetres('--wrist <mm>', 'wrist to knot for, in place of a length'))
    .addOption(millimetres('--tails <mm>', 'tail at each end of a piece; else 150'))
    .addOption(figure('--margin <percent>', 'added for safety; else 10'))
    .addOption(millimetres('--workable <mm>', 'longest piece that is good to work with; else 5000'))
    .addOption(millimetres('--put-up <mm>', 'length of a skein, card or ball; else 8000'))
    .option('--swatch <rows,columns,width,length>', 'a swatch and its size in mm', parseSwatch)
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: CutCommandOptions) => done(await cut(file, options)));

  planning(
    command('ease', 'Say what would make a piece easier to knot, and the best way to start it.')
      .argument('<file>', CHART)
      .addOption(wholeFrom1('--most <number>', 'suggestions to give; else 12', 100))
      .option('--may-mirror', 'the drawing may be mirrored for it'),
  )
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: EaseCommandOptions) => done(await ease(file, options)));

  command('solve', 'Find strings and knots that show a wanted picture, or prove there are none.')
    .argument(
      '<picture>',
      'a PNG or a chart, a field for each knot; or a picture wanted of a diagonal pattern; - for standard input',
    )
    .addOption(whole('--strings <number>', 'strings; else two for each column', 2, 300))
    .addOption(
      new Option('--first <slot>', 'slot of the first knot of row 1; else 1').choices(['1', '2']),
    )
    .option('--repeat', 'the colours must end as they start, so that it can be repeated')
    .option('--start <keys>', 'colour of each string at the start by its key, ? for any')
    .addOption(
      new Option('--most <key=number>', 'most strings of a colour; may be given again').argParser(
        colourLimit,
      ),
    )
    .option('--fewest <key>', 'as few strings of this colour as can be')
    .addOption(whole('--at-most-wrong <number>', 'knots that may differ; else 0', 0, 1_500_000))
    .addOption(
      new Option('--prefer <what>', 'what is liked best; else none').choices(SOLVE_PREFERENCES),
    )
    .addOption(figure('--time <seconds>', 'time limit; else 60'))
    .option(
      '-o, --output <file>',
      'file for the pattern, as a document if it ends in .json; - for standard output',
    )
    .option('--json', 'answer as JSON')
    .action(async (file: string, options: SolveCommandOptions) => done(await solve(file, options)));

  return program;
}

function colourLimit(
  text: string,
  before: readonly (readonly [string, number])[] = [],
): readonly (readonly [string, number])[] {
  const [, key, number] = /^(.)=(\d{1,6})$/su.exec(text) ?? [];
  if (key === undefined) {
    throw new InvalidArgumentError('Give the key of a colour and a number, such as b=4.');
  }
  return [...before, [key, Number(number)]];
}

function wholeFrom1(flags: string, description: string, most: number): Option {
  return whole(flags, description, 1, most);
}

function whole(flags: string, description: string, least: number, most: number): Option {
  return new Option(flags, description).argParser((text) => {
    const value = Number(text);
    if (/^\d+$/u.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`);
  });
}

function millimetres(flags: string, description: string): Option {
  return figure(flags, `${description}, in mm`);
}

/** An option that takes a number; whether it is one that makes sense is for the command to say. */
function figure(flags: string, description: string): Option {
  return new Option(flags, description).argParser((text) => {
    const value = Number(text);
    if (text.trim() === '' || Number.isNaN(value)) {
      throw new InvalidArgumentError('Give a number.');
    }
    return value;
  });
}

/** Options of every command that makes a plan. */
function planning(command: Command): Command {
  return command
    .addOption(
      new Option(
        '--edge <technique>',
        'edge technique; what the chart asks for, else straight',
      ).choices([...EDGE_TECHNIQUES]),
    )
    .addOption(
      new Option(
        '--start <side>',
        'side from which row 1 is knotted; what the chart asks for, else left',
      ).choices([...START_SIDES]),
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
