import type { BrowserContextOptions, Page } from 'playwright-core';
import { DESKTOP } from '../../../../testing/browser.js';

export interface DrawnChart {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly { key: string; hex: string; name: string }[];
  readonly cells: Uint8Array;
}

export interface PageSession {
  readonly project: { readonly chart: DrawnChart } | null;
  readonly piece: { readonly chart: DrawnChart } | null;
  openChart(chart: DrawnChart): void;
}

export type WithSession = HTMLElement & { readonly session: PageSession };

export const COLOURS = [
  { key: '.', hex: '#f4f1e8', name: 'chalk' },
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#d9642a', name: 'buoy orange' },
];

/** Opens the view with a chart: `.` chalk, `b` lake blue, `o` buoy orange; all else is as it is set up. */
export async function openDraw(
  openPage: (path?: string, options?: BrowserContextOptions) => Promise<Page>,
  rows: readonly string[],
  options: BrowserContextOptions = DESKTOP,
): Promise<Page> {
  const page = await openPage('#draw', { reducedMotion: 'reduce', ...options });
  await page.locator('.sheet-cell').waitFor();
  await openChart(page, rows);
  return page;
}

export async function openChart(
  page: Page,
  rows: readonly string[],
  knots?: string,
): Promise<void> {
  await page.evaluate(
    ({ rows, colours, knots }) => {
      const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
      const keys = colours.map(({ key }) => key);
      session.openChart({
        name: 'Heron',
        rows: rows.length,
        columns: rows[0]?.length ?? 0,
        colours,
        cells: Uint8Array.from([...rows.join('')], (key) => keys.indexOf(key)),
        ...(knots === undefined ? {} : { knots: Uint8Array.from([...knots], Number) }),
      });
    },
    { rows, colours: COLOURS, knots },
  );
  await worked(page);
}

/** Waits until the chart as it stands is worked out and painted. */
export async function worked(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
    return session.project !== null && session.piece?.chart === session.project.chart;
  });
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

/** The chart as rows of keys. */
export async function rowsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
    const chart = session.project?.chart as DrawnChart;
    return Array.from({ length: chart.rows }, (_, row) =>
      Array.from(
        chart.cells.subarray(row * chart.columns, (row + 1) * chart.columns),
        (cell) => chart.colours[cell]?.key,
      ).join(''),
    );
  });
}

/** The middle of a knot in the page's window, rows and columns from 1. */
export async function middleOf(
  page: Page,
  row: number,
  column: number,
): Promise<{ x: number; y: number }> {
  return page.evaluate(
    ([r, c]) => {
      const cell = document.querySelector('.sheet-cell') as HTMLElement;
      const box = cell.getBoundingClientRect();
      const fromRow = Number(cell.parentElement?.getAttribute('aria-rowindex'));
      const fromColumn = Number(cell.getAttribute('aria-colindex'));
      return {
        x: box.left + box.width * ((c as number) - fromColumn + 0.5),
        y: box.top + box.height * ((r as number) - fromRow + 0.5),
      };
    },
    [row, column],
  );
}

/** Drags the mouse from knot to knot. */
export async function drag(
  page: Page,
  ...knots: readonly (readonly [number, number])[]
): Promise<void> {
  const points = [];
  for (const [row, column] of knots) points.push(await middleOf(page, row, column));
  const [first] = points;
  if (first === undefined) return;
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of points) await page.mouse.move(x, y);
  await page.mouse.up();
}

export async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click();
}

/** A colour of the legend to draw with. */
export async function drawIn(page: Page, name: string): Promise<void> {
  await page.locator('.chip', { hasText: name }).click();
}

/** The colour of the canvas at the middle of a knot, a little aside of its signs. */
export async function painted(page: Page, row: number, column: number): Promise<string> {
  const { x, y } = await middleOf(page, row, column);
  return page.evaluate(
    ([x, y]) => {
      const canvas = document.querySelector('.sheet-canvas') as HTMLCanvasElement;
      const box = canvas.getBoundingClientRect();
      const scale = canvas.width / box.width;
      const data = canvas
        .getContext('2d')
        ?.getImageData((x - box.left) * scale, (y - box.top) * scale, 1, 1).data;
      return `#${[...(data ?? [])]
        .slice(0, 3)
        .map((value) => value.toString(16).padStart(2, '0'))
        .join('')}`;
    },
    [x, y] as const,
  );
}

export async function cursorHasFocus(page: Page): Promise<boolean> {
  return page.evaluate(() => document.activeElement?.classList.contains('sheet-cell') === true);
}

export const BLANK = ['......', '......', '......', '......', '......'];
