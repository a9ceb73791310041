// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { PNG } from 'pngjs';

/**
 * A narrow page on which nothing plays by itself: the knot is out of sight at first, so nothing is
 * drawn in 3D. Quicker, where no playing is looked at.
 */
export const STILL = {
  viewport: { width: 800, height: 700 },
  reducedMotion: 'reduce',
} as const satisfies BrowserContextOptions;

/** A text chart of the club's; another name or other rows where a test needs them. */
export function textChart(rows: readonly string[], name = 'Kittiwake', extra = ''): Buffer {
  const legend = ['b #1f6fb2 lake blue', 'o #d9642a buoy orange', 'w #f4f1e8 chalk'];
  return Buffer.from([`name ${name}`, ...legend, '', ...rows, extra].join('\n'));
}

/** A PNG of one pixel for each knot, written by a library of its own. */
export function pngChart(
  columns: number,
  rows: number,
  colourOf: (row: number, column: number) => readonly [number, number, number],
): Buffer {
  const png = new PNG({ width: columns, height: rows });
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      png.data.set([...colourOf(row, column), 255], 4 * (row * columns + column));
    }
  }
  return PNG.sync.write(png, { colorType: 2 });
}

export interface ChosenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

export function asText(buffer: Buffer, name = 'chart.txt'): ChosenFile {
  return { name, mimeType: 'text/plain', buffer };
}

/** Waits until the demo, which is opened first, is there and proven. */
export async function demoShown(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'Otter' }).waitFor();
  await page.locator('halfhitch-knot').waitFor();
}

export async function choose(page: Page, file: ChosenFile): Promise<void> {
  await page.locator('input[type=file]').setInputFiles({ ...file });
}

/** Lets a file fall onto the page as a hand would. */
export async function drop(page: Page, file: ChosenFile): Promise<void> {
  await page.evaluate(
    ({ name, mimeType, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], name, { type: mimeType }));
      const happen = (type: string): void => {
        document.body.dispatchEvent(
          new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }),
        );
      };
      happen('dragover');
      happen('drop');
    },
    { name: file.name, mimeType: file.mimeType, base64: file.buffer.toString('base64') },
  );
}

export async function kindPlayed(page: Page): Promise<string | null> {
  return page.locator('halfhitch-knot').getAttribute('kind');
}

/** Clicks the knot in a place of the picture, rows and columns from 1. */
export async function clickKnot(page: Page, row: number, column: number): Promise<void> {
  await page.locator('halfhitch-fabric').scrollIntoViewIfNeeded();
  const at = await page.evaluate(
    ([r, c]) => {
      const cell = document.querySelector<HTMLElement>('.fabric-cell');
      const sheet = document.querySelector<HTMLElement>('.fabric-sheet');
      if (!cell || !sheet) throw new Error('There is no picture.');
      const box = cell.getBoundingClientRect();
      const chosen = {
        row: Number(cell.parentElement?.getAttribute('aria-rowindex')),
        column: Number(cell.getAttribute('aria-colindex')),
      };
      return {
        x: box.left + box.width * ((c as number) - chosen.column + 0.5),
        y: box.top + box.height * ((r as number) - chosen.row + 0.5),
      };
    },
    [row, column],
  );
  await page.mouse.click(at.x, at.y);
}
