import {
  type Chart,
  chevrons,
  type DiagonalPattern,
  InputError,
  planAlpha,
  printChartDocument,
  readChart,
  readChartDocument,
  simulateDiagonal,
  verifyPlan,
} from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { chartAsKnotted } from '../../src/keep/as-knotted.js';
import { embeddedDocument, holdsChart, jsonForMarkup } from '../../src/keep/embedded.js';
import { fileNameOf } from '../../src/keep/file-name.js';
import { pngOfChart } from '../../src/keep/png-chart.js';
import { printProjectDocument, readProjectDocument } from '../../src/keep/project-document.js';
import { svgOfPiece } from '../../src/keep/svg-picture.js';
import { newDiagonalProject } from '../../src/project/project.js';
import { anyDiagonalProject, COLOURS } from '../diagonal/projects.js';
import { aChart, HOSTILE, projectOf } from './charts.js';

const hexes = ({ cells, colours }: Chart): string[] =>
  Array.from(cells, (cell) => colours[cell]?.hex ?? '');

describe('the PNG chart', () => {
  test('has one pixel a knot and is read back with the same colours', () => {
    fc.assert(
      fc.property(aChart(), (chart) => {
        const read = readChart(pngOfChart(chart), 'heron.png').chart;
        expect([read.rows, read.columns]).toEqual([chart.rows, chart.columns]);
        expect(hexes(read)).toEqual(hexes(chart));
      }),
    );
  });
});

describe('a project’s document', () => {
  test('is read back as it was', () => {
    fc.assert(
      fc.property(aChart(), fc.boolean(), (chart, begun) => {
        const project = projectOf(chart);
        const progress = begun
          ? { done: 3, columns: 12, seconds: 61, marks: Uint32Array.of(7, 0xffffffff) }
          : null;
        const read = readProjectDocument(printProjectDocument(project, progress));
        const { edge, start } = project.choice;
        expect(read.project).toEqual({ ...project, chart: { ...chart, edge, start } });
        expect(read.progress).toEqual(progress);
      }),
    );
  });

  test('of a diagonal pattern is read back as it was, with the picture that is still wanted', () => {
    fc.assert(
      fc.property(anyDiagonalProject, (project) => {
        const text = printProjectDocument(project);
        expect(readProjectDocument(text).project).toEqual(project);
        expect(JSON.parse(text).version).toBe(2);
      }),
    );
  });

  test('of a diagonal pattern is refused where the picture does not belong to it', () => {
    const [pattern, other] = [12, 10].map((strings) => chevrons({ strings, colours: COLOURS }));
    const project = newDiagonalProject(pattern as DiagonalPattern, null, USUAL_SETTINGS);
    const wanted = simulateDiagonal(other as DiagonalPattern).picture;
    const text = printProjectDocument({ ...project, wanted });
    expect(() => readProjectDocument(text)).toThrow(/another lattice/);
  });

  test('is well-formed JSON that holds the chart’s own document', () => {
    const chart = readChartDocument(
      '{"format":"halfhitch-chart","version":1,"colours":[{"key":"b","hex":"#1f6fb2"}],"rows":["bb"]}',
    ).chart;
    const { chart: held } = JSON.parse(printProjectDocument(projectOf(chart)));
    expect(readChartDocument(JSON.stringify(held)).chart.rows).toBe(1);
  });

  test('is refused with what is wrong, where, and what to do', () => {
    const sound = printProjectDocument(
      projectOf(readChart(Buffer.from('b #1f6fb2\nw #ffffff\n\nbw\nwb\n'), 'otter.txt').chart),
    );
    const lineOf = (part: string): number => sound.split(part)[0]?.split('\n').length ?? 0;
    const cases: [string, string, RegExp][] = [
      ['"version": 1,\n  "id"', '"version": 2,\n  "id"', /line 3.*reads version 1: update it/],
      ['"wb"', '"wx"', /row 2, column 2.*stands for nothing/],
      ['#ffffff', '#fffffg', new RegExp(`line ${lineOf('#ffffff')},`)],
      ['"wb"', '"w"', /row 2/],
      ['"id": "8c', '"id": "../8c', /line 4.*no mark of a project/],
      ['"created": "2027', '"created": "x', /line 5.*no time/],
      ['"cut"', '"cuts"', /no property "cuts"/],
      ['halfhitch-project', 'halfhitch-plan', /This is a plan/],
    ];
    for (const [from, to, told] of cases) {
      expect(sound).toContain(from);
      expect(() => readProjectDocument(sound.replace(from, to))).toThrow(told);
      expect(() => readProjectDocument(sound.replace(from, to))).toThrow(InputError);
    }
    for (let end = 0; end < sound.trimEnd().length; end += 7) {
      expect(() => readProjectDocument(sound.slice(0, end))).toThrow(InputError);
    }
  });

  test('is told of by the reader of charts as what it is', () => {
    const text = '{"format": "halfhitch-project", "version": 1}';
    expect(() => readChart(Buffer.from(text), 'otter.json')).toThrow(/project of the workbench/);
  });
});

describe('charts inside pictures and pages', () => {
  const hostile: Chart = {
    name: HOSTILE,
    rows: 2,
    columns: 2,
    colours: [
      { key: '<', hex: '#1f6fb2', name: HOSTILE },
      { key: '"', hex: '#d9642a', name: 'javascript:window.hurt=1' },
    ],
    cells: Uint8Array.of(0, 1, 1, 0),
    edge: 'straight',
    start: 'left',
  };

  test('are ASCII without a letter that means something in markup', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const json = JSON.stringify(value, null, 2);
        expect(jsonForMarkup(json)).toMatch(/^[\n -%'-;=?-~]*$/);
        expect(JSON.parse(jsonForMarkup(json))).toEqual(JSON.parse(json));
      }),
    );
  });

  test('are read back from the SVG picture, whatever the names hold', () => {
    fc.assert(
      fc.property(fc.oneof({ weight: 5, arbitrary: aChart() }, fc.constant(hostile)), (chart) => {
        const { edge = 'straight', start = 'left' } = chart;
        const plan = planAlpha(chart, { edge, start });
        const svg = svgOfPiece(chart, plan, verifyPlan(plan, chart));
        const bytes = new TextEncoder().encode(svg);
        expect(holdsChart(bytes)).toBe(true);
        expect(readChartDocument(embeddedDocument(svg)).chart).toEqual(chart);
        expect(svg).not.toMatch(/<(script|img)|onerror="/);
        expect(svg.match(/<\/svg>/g)).toHaveLength(1);
      }),
      { numRuns: 40 },
    );
  });

  test('are not looked for in anything else', () => {
    const texts = ['', '{"a": "<svg id=\\"halfhitch-pattern\\">"}', '<svg></svg>', 'b #fff\n\nb'];
    for (const text of texts) expect(holdsChart(Buffer.from(text))).toBe(false);
    expect(holdsChart(pngOfChart(hostile))).toBe(false);
  });

  test('that end too early are told of', () => {
    expect(() => embeddedDocument('<svg><metadata id="halfhitch-pattern"')).toThrow(/ends before/);
    expect(() => embeddedDocument('<svg><metadata id="halfhitch-pattern">{')).toThrow(
      /ends before/,
    );
    const text = embeddedDocument('<svg><metadata id="halfhitch-pattern">{"rows": 1}</metadata>');
    expect(() => readChartDocument(text)).toThrow(InputError);
  });

  test('of more than 100,000 knots are not drawn', () => {
    const chart: Chart = { ...hostile, rows: 1001, columns: 100, cells: new Uint8Array(100_100) };
    const plan = planAlpha(chart);
    expect(() => svgOfPiece(chart, plan, verifyPlan(plan, chart))).toThrow(/most is 100,000/);
  });
});

describe('names of files', () => {
  test('are made of letters, digits and hyphens alone', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), (name) => {
        expect(fileNameOf(name, '.svg')).toMatch(
          /^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}-]{0,240}\.svg$/u,
        );
      }),
    );
  });

  test.each([
    ['Heron', 'heron.png'],
    ['Tarn Ellerby: Kittiwake!', 'tarn-ellerby-kittiwake.png'],
    ['Fähre', 'fähre.png'],
    ['../../etc/passwd', 'etc-passwd.png'],
    [HOSTILE, 'script-metadata-title-img-src-x-onerror-window-hurt-1-script.png'],
    ['CON', 'halfhitch-chart.png'],
    ['', 'halfhitch-chart.png'],
  ])('%j becomes %s', (name, file) => {
    expect(fileNameOf(name, '.png')).toBe(file);
  });
});

test('a chart with names and colours that no file may hold is made fit for one', () => {
  const chart: Chart = {
    name: `  Heron\u0000\u2028II${'x'.repeat(300)}`,
    rows: 1,
    columns: 3,
    colours: [
      { key: 'a', hex: '#1f6fb2', name: 'lake\nblue' },
      { key: 'b', hex: '#d9642a', name: '' },
      { key: 'c', hex: '#1f6fb2', name: 'the same' },
    ],
    cells: Uint8Array.of(0, 1, 2),
  };
  const fit = chartAsKnotted({ chart, choice: { edge: 'wrapped', start: 'right' } });
  const read = readChartDocument(printChartDocument(fit)).chart;
  expect(read).toEqual(fit);
  expect(hexes(read)).toEqual(hexes(chart));
  expect(read.name).toMatch(/^Heron IIx+$/);
  expect(read.colours.map(({ name }) => name)).toEqual(['lake blue', '']);
  expect([read.edge, read.start]).toEqual(['wrapped', 'right']);
});

test('the chart’s document with its edges and start is read back whole', () => {
  fc.assert(
    fc.property(aChart(), (chart) => {
      expect(readChartDocument(printChartDocument(chart)).chart).toEqual(chart);
    }),
  );
});
