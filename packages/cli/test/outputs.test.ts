import { spawn } from 'node:child_process';
import { chmodSync, linkSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { decode } from 'fast-png';
import { beforeAll, describe, expect, it } from 'vitest';
import { pngOf, textOf, waveBand } from './support/charts.js';
import { halfhitch, TOOL, useTool } from './support/halfhitch.js';

const { folder, path } = useTool();
const small = waveBand(7, 6, 3);

beforeAll(() => {
  writeFileSync(path('small.png'), pngOf(small));
  writeFileSync(path('small.txt'), textOf(small));
});

const here = { cwd: folder };

describe('plan and verify', () => {
  it('write a plan that verifies against its chart alone', async () => {
    expect(
      (await halfhitch(['plan', 'small.png', '--format', 'json', '-o', 'p.json'], here)).code,
    ).toBe(0);
    const verified = await halfhitch(['verify', 'p.json', '--chart', 'small.png', '--json'], here);
    const checked = await halfhitch(['check', 'small.png', '--json'], here);
    expect(verified.code).toBe(0);
    expect(verified.stdout).toBe(checked.stdout);
  });

  it('take the plan or the chart from standard input', async () => {
    const plan = await halfhitch(['plan', 'small.png', '--format', 'json'], here);
    const piped = await halfhitch(['verify', '-', '--chart', 'small.png'], {
      ...here,
      input: plan.bytes,
    });
    expect(piped.code).toBe(0);
    expect(piped.stdout).toMatch(/^standard input: it knots out as drawn/);
  });

  interface PlanStep {
    do: string;
    kind?: string;
    tying?: string;
    held?: string;
  }

  interface PlanDocument {
    rows: { row: number; steps: PlanStep[] }[];
  }

  /** The findings about a plan edited by hand. */
  async function edited(
    edit: (rows: PlanDocument['rows']) => void,
  ): Promise<{ code: number | null; places: string[] }> {
    const plan = JSON.parse(
      (await halfhitch(['plan', 'small.png', '--format', 'json'], here)).stdout,
    ) as PlanDocument;
    edit(plan.rows);
    const { code, stdout } = await halfhitch(['verify', '-', '-c', 'small.png', '--json'], {
      ...here,
      input: JSON.stringify(plan),
    });
    const { findings } = JSON.parse(stdout) as {
      findings: { grade: string; row: number; column: number; message: string }[];
    };
    return {
      code,
      places: findings
        .filter(({ grade }) => grade === 'wrong')
        .map(({ row, column }) => `${row} ${column}`),
    };
  }

  const knotOn = (rows: PlanDocument['rows'], row: number, held: string): [PlanStep[], number] => {
    const steps = (rows[row - 1] as { steps: PlanStep[] }).steps;
    const at = steps.findIndex((step) => step.do === 'knot' && step.held === held);
    expect(at).toBeGreaterThanOrEqual(0);
    return [steps, at];
  };

  it.each([
    ['an edge knot removed', 3, 'B6', (steps: PlanStep[], at: number) => steps.splice(at, 1)],
    [
      'a knot of the wrong kind',
      3,
      'B2',
      (steps: PlanStep[], at: number) => {
        (steps[at] as PlanStep).kind = 'forward-backward';
      },
    ],
    [
      'a wrong lead',
      3,
      'B2',
      (steps: PlanStep[], at: number) => {
        (steps[at] as PlanStep).tying = 'L1';
      },
    ],
    ['a skipped string', 3, 'B2', (steps: PlanStep[], at: number) => steps.splice(at, 1)],
  ] as const)('find %s', async (_, row, held, edit) => {
    const { code, places } = await edited((rows) => {
      const [steps, at] = knotOn(rows, row, held);
      // A wrong lead must be another one.
      if ((steps[at] as PlanStep).tying === 'L1') (steps[at] as PlanStep).tying = 'L2';
      edit(steps, at);
    });
    expect(code).toBe(1);
    expect(places[0]).toBe(`${row} ${held.slice(1)}`);
  });

  it('refuse a chart of another size', async () => {
    writeFileSync(path('other.png'), pngOf(waveBand(8, 6, 3)));
    const plan = await halfhitch(['plan', 'small.png', '--format', 'json'], here);
    const outcome = await halfhitch(['verify', '-', '-c', 'other.png'], {
      ...here,
      input: plan.bytes,
    });
    expect(outcome.code).toBe(2);
    expect(outcome.stderr).toMatch(/7 rows of 6 knots, but the chart has 8 rows/);
  });

  it('write the instructions as text and as a page', async () => {
    const text = await halfhitch(['plan', 'small.txt'], here);
    expect(text.code).toBe(0);
    expect(text.stdout).toMatch(/^Knotting instructions: Kittiwake\n/);
    expect(text.stdout.match(/^Row \d+, from /gm)).toHaveLength(7);
    const page = await halfhitch(['plan', 'small.txt', '--format', 'html'], here);
    expect(page.stdout).toMatch(/^<!DOCTYPE html>/);
    expect(page.stdout).toMatch(/<\/html>\n$/);
  });
});

describe('trace', () => {
  it('prints a line for each knot that shows the drawing', async () => {
    const { code, stdout } = await halfhitch(['trace', 'small.png'], here);
    expect(code).toBe(0);
    const knots = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(knots).toHaveLength(42);
    for (const knot of knots) {
      expect(Object.keys(knot)).toEqual([
        'row',
        'column',
        'direction',
        'kind',
        'tying',
        'held',
        'colour',
        'front',
        'parked',
      ]);
      const cell = small.cells[(knot.row - 1) * 6 + knot.column - 1] as number;
      expect(knot.colour).toBe(small.colours[cell]?.hex);
      expect(knot.direction).toBe(knot.row % 2 === 1 ? 'right' : 'left');
      expect(knot.held).toBe(`B${knot.column}`);
      expect(knot.front).toHaveLength(7);
      expect(knot.front.filter((id: string) => id.startsWith('B'))).toEqual([
        'B1',
        'B2',
        'B3',
        'B4',
        'B5',
        'B6',
      ]);
      for (const parked of knot.parked) {
        expect(Object.keys(parked)).toEqual(['string', 'row', 'column', 'how']);
        expect(['through', 'behind', 'down']).toContain(parked.how);
      }
    }
  });

  it('stops quietly when its reader does', async () => {
    writeFileSync(path('long.png'), pngOf(waveBand(2000, 60, 6)));
    const child = spawn(process.execPath, [TOOL, 'trace', path('long.png')], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stderr = '';
    child.stderr.on('data', (chunk) => {
      stderr += chunk;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });
});

describe('render', () => {
  it('draws a picture that a general-purpose SVG renderer reads', async () => {
    expect((await halfhitch(['render', 'small.png', '-o', 'out.svg'], here)).code).toBe(0);
    const svg = readFileSync(path('out.svg'), 'utf8');
    expect(svg.match(/data-row=/g)).toHaveLength(42);
    const picture = new Resvg(svg).render();
    expect([picture.width, picture.height]).toEqual([180, 256]);
    const piped = await halfhitch(['render', 'small.png', '-o', '-'], here);
    expect(piped.stdout).toBe(svg);
  });

  it('draws a PNG in which each knot shows mostly its own colour', async () => {
    expect((await halfhitch(['render', 'small.png', '-o', 'out.png'], here)).code).toBe(0);
    const { width, height, data, channels } = decode(readFileSync(path('out.png')));
    expect([width, height]).toEqual([360, 512]);
    const drawn = small.colours.map(({ hex }) =>
      [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)),
    );
    for (let row = 0; row < 7; row++) {
      for (let column = 0; column < 6; column++) {
        // The mean over the middle of the knot is nearest to the colour that is drawn.
        const mean = [0, 0, 0];
        for (let y = 0; y < 30; y++) {
          for (let x = 0; x < 30; x++) {
            const at = ((88 + row * 44 + 7 + y) * width + 36 + column * 48 + 9 + x) * channels;
            for (let c = 0; c < 3; c++)
              mean[c] = (mean[c] as number) + (data[at + c] as number) / 900;
          }
        }
        const far = drawn.map((rgb) =>
          Math.hypot(...rgb.map((value, c) => value - (mean[c] as number))),
        );
        expect(far.indexOf(Math.min(...far))).toBe(small.cells[row * 6 + column]);
      }
    }
  });

  it('refuses what would be too large, and writes nothing', async () => {
    writeFileSync(path('large.png'), pngOf(waveBand(3001, 100, 2)));
    for (const name of ['large.svg', 'large-drawn.png']) {
      const outcome = await halfhitch(['render', 'large.png', '-o', name], here);
      expect(outcome.code).toBe(2);
      expect(outcome.stderr).toMatch(/^halfhitch: large\.png: .*too large/);
      expect(readdirSync(folder)).not.toContain(name);
    }
  });
});

describe('files are safe', () => {
  it('the input is never written over, whatever it is called', async () => {
    const before = readFileSync(path('small.png'));
    linkSync(path('small.png'), path('linked.png'));
    for (const name of ['small.png', './small.png', 'linked.png']) {
      const outcome = await halfhitch(['render', 'small.png', '-o', name], here);
      expect(outcome.code).toBe(2);
      expect(outcome.stderr).toMatch(/This is the file that is read/);
    }
    expect(readFileSync(path('small.png'))).toEqual(before);
  });

  it('an output that was there stays when the work fails, and its rights when it does not', async () => {
    writeFileSync(path('kept.svg'), 'mine');
    chmodSync(path('kept.svg'), 0o640);
    await halfhitch(['render', 'empty.png', '-o', 'kept.svg'], here);
    expect(readFileSync(path('kept.svg'), 'utf8')).toBe('mine');
    await halfhitch(['render', 'small.png', '-o', 'kept.svg'], here);
    expect(readFileSync(path('kept.svg'), 'utf8')).toMatch(/^<svg/);
    expect(statSync(path('kept.svg')).mode & 0o777).toBe(0o640);
  });

  it('nothing is left beside them', () => {
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it.runIf(process.platform === 'linux')('a full disk is said, not thrown', async () => {
    const outcome = await halfhitch(['plan', 'small.png', '-o', '/dev/full'], here);
    expect(outcome.code).toBe(2);
    expect(outcome.stderr).toMatch(/^halfhitch: \/dev\/full: There is no room left/);
  });
});
