// What one stroke of the pencil costs on a chart of 1,000 rows of 100 knots, from the moment the
// mouse lets go: until the picture is painted and read back, and until the verdict has come.
//
// Baselines in the same run: every knot in sight painted by a fillRect of its own on a canvas of
// the same kind and size, in the frame after the mouse has let go, and read back; and the chart planned and
// verified by the core in Node, bare. The browser draws in software, so only ratios mean anything.
import { planAlpha, verifyPlan } from '@halfhitch/core';
import { chromium } from 'playwright-core';
import { serveApp } from '../../../scripts/lib/app-server.mjs';
import { ensureBuilt } from '../../../scripts/lib/build-targets.mjs';
import { CHROMIUM_FLAGS, requireChromium } from '../../../scripts/lib/chromium.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { median } from '../../../testing/bench-timing.mjs';

const ROWS = 1_000;
const COLUMNS = 100;
const STROKES = 21;

/** Wave bands, so that rows change colour as often as those of a real piece. */
function chart() {
  const cells = new Uint8Array(ROWS * COLUMNS);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const wave = Math.round(4 * Math.sin(row / 6) + column) % 24;
      cells[row * COLUMNS + column] = wave < 12 ? 0 : 1;
    }
  }
  const colours = [
    { key: '.', hex: '#f4f1e8', name: 'chalk' },
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'o', hex: '#d9642a', name: 'buoy orange' },
  ];
  return { name: 'Regatta', rows: ROWS, columns: COLUMNS, colours, cells };
}

const ninth = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length * 0.9)];

function bare() {
  const times = [];
  for (let i = 0; i < 7; i++) {
    const began = performance.now();
    const drawing = chart();
    verifyPlan(planAlpha(drawing, { edge: 'straight', start: 'left' }), drawing);
    times.push(performance.now() - began);
  }
  return median(times);
}

await ensureBuilt('app');
const served = await serveApp();
const browser = await chromium.launch({
  executablePath: requireChromium(),
  args: [...CHROMIUM_FLAGS],
});
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${served.address}#draw`);
  await page.locator('.sheet-cell').waitFor();
  await page.evaluate(
    (made) => {
      const { session } = document.querySelector('halfhitch-workbench');
      session.openChart({ ...made, cells: Uint8Array.from(made.cells) });
    },
    { ...chart(), cells: [...chart().cells] },
  );
  await worked(page);
  console.log('knots in sight  painted ms  (9 of 10)  fillRect ms   ratio  verdict ms');
  for (const height of [24, 8, 3]) {
    await zoomTo(page, height);
    const { painted, verdicts, knots, plain } = await strokes(page);
    noteRatio(`a stroke, knots ${height} px high`, median(painted) / median(plain));
    console.log(
      `${String(knots).padStart(14)} ${median(painted).toFixed(1).padStart(11)} ${ninth(painted).toFixed(1).padStart(10)} ${median(plain).toFixed(1).padStart(12)} ${(median(painted) / median(plain)).toFixed(2).padStart(7)} ${median(verdicts).toFixed(0).padStart(11)}`,
    );
  }
  console.log(`\nplanned and verified by the core in Node, bare: ${bare().toFixed(0)} ms`);
} finally {
  await browser.close();
  await served.close();
}

async function worked(page) {
  await page.waitForFunction(() => {
    const { session } = document.querySelector('halfhitch-workbench');
    return session.piece?.chart === session.project.chart && !session.busy;
  });
}

async function zoomTo(page, height) {
  await page.locator('.sheet-cell').focus();
  const now = () =>
    page.evaluate(() => document.querySelector('halfhitch-sheet').layout.cellHeight);
  for (let i = 0; i < 40; i++) {
    const before = await now();
    if (before <= height * 1.13) break;
    await page.keyboard.press('-');
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    if ((await now()) === before) break;
  }
}

async function strokes(page) {
  const painted = [];
  const plain = [];
  const verdicts = [];
  const knots = await page.evaluate(layPlain);
  for (let i = 0; i < STROKES; i++) {
    await page.locator('.sheet-cell').focus();
    await page.keyboard.press(i % 2 === 0 ? '3' : '2');
    const sheet = await page.locator('halfhitch-sheet').boundingBox();
    // In the middle, where there is chart at any size; each over the one before in another colour.
    const x = sheet.x + sheet.width / 2 - 40;
    await page.evaluate(watchStroke);
    await page.mouse.move(x, sheet.y + 60);
    await page.mouse.down();
    await page.mouse.move(x + 80, sheet.y + 150, { steps: 4 });
    await page.mouse.up();
    const { picture, verdict } = await page.evaluate(() => globalThis.stroke);
    painted.push(picture);
    verdicts.push(verdict);
    await worked(page);
    // By turns, so that a machine busy with other things is as busy for both.
    await page.evaluate(watchPlain);
    await page.mouse.down();
    await page.mouse.up();
    plain.push(await page.evaluate(() => globalThis.plain));
  }
  await page.evaluate(() => document.querySelector('#plain')?.remove());
  return { painted, plain, verdicts, knots };
}

/** Runs in the page: times from letting go to the picture and to the verdict. */
function watchStroke() {
  const { session } = document.querySelector('halfhitch-workbench');
  const canvas = document.querySelector('.sheet-canvas');
  globalThis.stroke = new Promise((done) => {
    const letGo = () => {
      const began = performance.now();
      const before = canvas.dataset.painted;
      const verdict = new Promise((proven) => {
        session.addEventListener('piece', () => proven(performance.now() - began), { once: true });
      });
      const look = async () => {
        if (canvas.dataset.painted === before) {
          requestAnimationFrame(look);
          return;
        }
        canvas.getContext('2d').getImageData(0, 0, 1, 1);
        const picture = performance.now() - began;
        done({ picture, verdict: await verdict });
      };
      requestAnimationFrame(look);
    };
    addEventListener('pointerup', letGo, { once: true, capture: true });
  });
}

/** Runs in the page: a canvas as large as the sheet's, below it; gives the knots that it shows. */
function layPlain() {
  const sheet = document.querySelector('.sheet-canvas');
  const canvas = document.createElement('canvas');
  canvas.id = 'plain';
  canvas.width = sheet.width;
  canvas.height = sheet.height;
  document.querySelector('.draw-board').append(canvas);
  const { cellWidth, cellHeight } = document.querySelector('halfhitch-sheet').layout;
  const { chart } = document.querySelector('halfhitch-workbench').session.project;
  const across = Math.min(chart.columns, Math.ceil(canvas.width / cellWidth));
  return across * Math.min(chart.rows, Math.ceil(canvas.height / cellHeight));
}

/** Runs in the page: the same knots by a rectangle each, in the next frame after letting go. */
function watchPlain() {
  const { chart } = document.querySelector('halfhitch-workbench').session.project;
  const { cellWidth: width, cellHeight: height } = document.querySelector('halfhitch-sheet').layout;
  const canvas = document.querySelector('#plain');
  const across = Math.min(chart.columns, Math.ceil(canvas.width / width));
  const down = Math.min(chart.rows, Math.ceil(canvas.height / height));
  globalThis.plain = new Promise((done) => {
    const letGo = (event) => {
      event.stopPropagation();
      const began = performance.now();
      requestAnimationFrame(() => {
        const ctx = canvas.getContext('2d', { willReadFrequently: true });
        for (let row = 0; row < down; row++) {
          for (let column = 0; column < across; column++) {
            ctx.fillStyle = chart.colours[chart.cells[row * chart.columns + column]].hex;
            ctx.fillRect(column * width, row * height, width - 1, height - 1);
          }
        }
        ctx.getImageData(0, 0, 1, 1);
        done(performance.now() - began);
      });
    };
    addEventListener('pointerdown', (event) => event.stopPropagation(), {
      once: true,
      capture: true,
    });
    addEventListener('pointerup', letGo, { once: true, capture: true });
  });
}
