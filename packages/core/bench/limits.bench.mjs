/**
 * The largest inputs that are allowed, and files made to be as costly as the limits let them: each in
 * a process of its own, with its time and the most memory that process ever had. `docs/limits.md` has
 * the figures of one run. What must not be let through fails the bench.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { deflateSync } from 'node:zlib';
import {
  Cursor,
  DIAGONAL_LIMITS,
  diagnose,
  InputError,
  makeMistakes,
  nothingSeen,
  PlanReader,
  planAlpha,
  planDiagonal,
  printDiagonalText,
  printPlan,
  printTextChart,
  readChart,
  readPattern,
  readPlan,
  StepListBuilder,
  simulateDiagonal,
  verifyDiagonal,
  verifyPlan,
} from '@halfhitch/core';
import { solveDiagonal } from '@halfhitch/core/solve';

const ROWS = 10_000;
const COLUMNS = 300;
const utf8 = (text) => new TextEncoder().encode(text);

/** Blocks of 64 colours: a change at every seventh knot. */
function largestChart() {
  const keys = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789*+';
  return {
    name: 'Tarn Ellerby',
    rows: ROWS,
    columns: COLUMNS,
    colours: [...keys].map((key, i) => ({
      key,
      hex: `#${(0x10_20_30 + 0x03_05_07 * i).toString(16).padStart(6, '0')}`,
      name: '',
    })),
    cells: Uint8Array.from(
      { length: ROWS * COLUMNS },
      (_, i) => (Math.floor((i % COLUMNS) / 7) + Math.floor(i / COLUMNS / 5)) % 64,
    ),
  };
}

function largestPattern() {
  const strings = DIAGONAL_LIMITS.maxStrings;
  return {
    name: 'Tarn Ellerby',
    strings,
    rows: ROWS,
    first: 0,
    colours: largestChart().colours,
    start: Uint8Array.from({ length: strings }, (_, i) => i % 64),
    knots: Uint8Array.from({ length: (ROWS * strings) / 2 }, (_, i) => {
      const across = strings / 2;
      const row = Math.floor(i / across);
      return row % 2 === 1 && i % across === across - 1 ? 255 : (i * 7 + row) % 4;
    }),
  };
}

/** Each case gives words for what came of it, or throws. */
const CASES = {
  'chart of 300 x 10,000 in 64 colours: read, planned, verified': () => {
    const { chart } = readChart(utf8(printTextChart(largestChart())), '');
    const { ok } = verifyPlan(planAlpha(chart), chart);
    return ok ? 'proven' : wrong('not proven');
  },
  'PNG of 300 x 10,000': () => {
    const { chart } = readChart(largestPng(), '');
    return `${chart.colours.length} colours`;
  },
  'plan of that chart: written and read': () => {
    const chart = largestChart();
    const pieces = [];
    let size = 0;
    for (const piece of printPlan(planAlpha(chart))) {
      size += piece.length;
      pieces.push(piece);
    }
    return refusedOr(
      () => {
        const plan = readPlan(pieces.join(''));
        return `${Math.round(size / 2 ** 20)} MiB, ${plan.steps.length.toLocaleString('en-GB')} steps`;
      },
      `${Math.round(size / 2 ** 20)} MiB, `,
    );
  },
  'diagonal pattern of 300 x 10,000: read, planned, verified': () => {
    const { pattern } = readPattern(utf8(printDiagonalText(largestPattern())), '');
    const { picture } = simulateDiagonal(pattern);
    const { ok } = verifyDiagonal(planDiagonal(pattern), picture, { pattern });
    return ok ? 'proven' : wrong('not proven');
  },
  'mistakes in 120,000 knots seen: diagnosed': () => {
    const whole = largestChart();
    const rows = 400;
    const chart = { ...whole, rows, cells: whole.cells.slice(0, rows * COLUMNS) };
    const plan = planAlpha(chart);
    const { seen } = makeMistakes(plan, [
      { kind: 'wrong-kind', row: 350, column: 40, tied: 'forward-backward' },
    ]);
    const looked = {
      ...nothingSeen(rows, COLUMNS, seen.colours),
      cells: seen.cells,
      looks: seen.looks,
    };
    return `${diagnose(plan, looked).length} explanations`;
  },
  'one row more than can be diagnosed': () => {
    const whole = largestChart();
    const rows = 401;
    const chart = { ...whole, rows, cells: whole.cells.slice(0, rows * COLUMNS) };
    const plan = planAlpha(chart);
    return mustRefuse(() => diagnose(plan, makeMistakes(plan, []).seen));
  },
  '30,000 knots wanted, that cannot be: searched for 10 seconds': async () => {
    const strings = 60;
    const rows = 1_000;
    const colours = largestChart().colours.slice(0, 4);
    let state = 7;
    const cells = Uint8Array.from({ length: rows * 30 }, (_, i) => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const row = Math.floor(i / 30);
      return row % 2 === 1 && i % 30 === 29 ? 255 : (state >>> 20) % 4;
    });
    const began = performance.now();
    const wanted = { name: '', strings, rows, first: 0, colours, cells };
    const { status } = await solveDiagonal(wanted, { seconds: 10, explain: false });
    const took = (performance.now() - began) / 1000;
    return took < 60 ? `${status} after ${took.toFixed(0)} s` : wrong(`${took.toFixed(0)} s`);
  },
  'text of 32 MiB on one line': () => mustRefuse(() => readChart(utf8('a'.repeat(2 ** 25)), '')),
  'text of 32 MiB of line ends': () => mustRefuse(() => readChart(utf8('\n'.repeat(2 ** 25)), '')),
  'document of 32 MiB of brackets': () =>
    mustRefuse(() => readChart(utf8(`{"a":${'['.repeat(2 ** 25 - 5)}`), '')),
  'document of 32 MiB of empty objects': () =>
    mustRefuse(() => readChart(utf8(`{"a":[${'{},'.repeat(11_000_000)}{}]}`), '')),
  'PNG that states 4,294,967,295 pixels a side': () =>
    mustRefuse(() => readChart(png(2 ** 32 - 1, 2 ** 32 - 1, 10), '')),
  'PNG of 9 x 9 that unpacks to 1 GiB': () => mustRefuse(() => readChart(png(9, 9, 2 ** 30), '')),
  'plan of 15,000,000 turns with 65,000 leads in front': () => {
    const plan = planOfManyLeads(65_000, 15_000_000);
    const cursor = new Cursor(plan.steps, plan.hung);
    cursor.seek(plan.steps.length);
    return `${cursor.done.toLocaleString('en-GB')} steps done`;
  },
  '10,000 rows with 20,000 leads cut off in each': () => {
    const plan = planOfManyRows(20_000);
    let knots = 0;
    for (const row of new PlanReader(plan)) knots += row.knots.length;
    return `${knots.toLocaleString('en-GB')} knots read`;
  },
};

function wrong(what) {
  throw new Error(what);
}

function mustRefuse(work) {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return `refused: ${error.code}`;
    throw error;
  }
  return wrong('it was taken');
}

function refusedOr(work, before) {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputError) return `${before}refused: ${error.code}`;
    throw error;
  }
}

function planOfManyLeads(leads, turns) {
  const strings = stringsOf(leads);
  const steps = new StepListBuilder(strings, leads + turns);
  for (let i = 1; i <= leads; i++) steps.code(7, i, 1);
  for (let i = 0; i < turns; i++) steps.code(9);
  return {
    name: '',
    rows: 1,
    columns: 1,
    edge: 'straight',
    start: 'left',
    strings,
    hung: ['B1'],
    steps: steps.finish(),
  };
}

function planOfManyRows(leads) {
  const strings = stringsOf(leads);
  const steps = new StepListBuilder(strings);
  for (let i = 1; i < leads; i++) {
    steps.code(7, i, 1);
    steps.code(8, i);
  }
  steps.code(7, leads, 1);
  for (let row = 0; row < ROWS; row++) {
    if (row > 0) steps.code(9);
    steps.code(1, leads, 0);
    steps.code(0, leads, 0);
  }
  return {
    name: '',
    rows: ROWS,
    columns: 1,
    edge: 'straight',
    start: 'left',
    strings,
    hung: ['B1'],
    steps: steps.finish(),
  };
}

function stringsOf(leads) {
  return Array.from({ length: leads + 1 }, (_, i) => ({
    id: i === 0 ? 'B1' : `L${i}`,
    role: i === 0 ? 'base' : 'lead',
    colour: '#1f6fb2',
    name: '',
  }));
}

function png(width, height, bytes) {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  return assembled(header, deflateSync(Buffer.alloc(bytes)));
}

function largestPng() {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(COLUMNS, 0);
  header.writeUInt32BE(ROWS, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const lines = Buffer.alloc(ROWS * (COLUMNS + 1));
  for (let i = 0; i < lines.length; i++) {
    if (i % (COLUMNS + 1) > 0) lines[i] = 4 * ((i * 2_654_435_761) % 64);
  }
  return assembled(header, deflateSync(lines));
}

function assembled(header, packed) {
  const part = (type, data) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const signature = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
  return Uint8Array.from(
    Buffer.concat([
      signature,
      part('IHDR', header),
      part('IDAT', packed),
      part('IEND', Buffer.alloc(0)),
    ]),
  );
}

function crc32(bytes) {
  let crc = -1;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb8_8320 : 0);
  }
  return (crc ^ -1) >>> 0;
}

/** A process has this much memory, MiB: what needs more fails. */
const ROOM = 4_096;

const asked = process.argv.indexOf('--case');
if (asked > 0) {
  const name = process.argv[asked + 1];
  const began = performance.now();
  const came = await CASES[name]();
  const seconds = (performance.now() - began) / 1000;
  const memory = process.resourceUsage().maxRSS / 1024;
  console.log(JSON.stringify({ came, seconds, memory }));
} else {
  let failed = 0;
  for (const name of Object.keys(CASES)) {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [`--max-old-space-size=${ROOM}`, fileURLToPath(import.meta.url), '--case', name],
      { encoding: 'utf8' },
    );
    if (status !== 0) {
      failed++;
      console.log(
        `${name}: FAILED: ${
          stderr
            .trim()
            .split('\n')
            .find((line) => /Error|FATAL/.test(line)) ?? status
        }`,
      );
      continue;
    }
    const { came, seconds, memory } = JSON.parse(stdout);
    console.log(`${name}: ${came}; ${seconds.toFixed(1)} s, ${Math.round(memory)} MiB`);
  }
  if (failed > 0) process.exitCode = 1;
}
