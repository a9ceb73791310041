// What it takes to make a chart of a photograph of 12 megapixels, in the built app: from choosing
// the file to the chart that can be used, and after a change of size or of colours.
//
// Baseline in the same page and run: the same file unpacked by the browser, its pixels read, and
// all of their channels summed up by a plain loop, which is the least that any averaging must do.
// The page waits 150 ms for the next change before it works one out; that is taken off.
import { chromium } from 'playwright-core';
import { serveApp } from '../../../scripts/lib/app-server.mjs';
import { ensureBuilt } from '../../../scripts/lib/build-targets.mjs';
import { CHROMIUM_FLAGS, requireChromium } from '../../../scripts/lib/chromium.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';
import { median } from '../../../testing/bench-timing.mjs';

const PAUSE = 150;
const RUNS = 5;

await ensureBuilt('app');
const served = await serveApp();
const browser = await chromium.launch({
  executablePath: requireChromium(),
  args: [...CHROMIUM_FLAGS],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${served.address}#draw`);
  await page.getByRole('button', { name: 'From a picture' }).first().click();
  await page.locator('halfhitch-from-picture .picture-chooser').waitFor();
  await page.evaluate(drawPhotograph);
  const plain = [];
  const opened = [];
  const sized = [];
  const coloured = [];
  for (let i = 0; i < RUNS; i++) {
    plain.push(await page.evaluate(sumPlainly));
    opened.push(await page.evaluate(choosePhotograph));
    sized.push(await page.evaluate(fillIn, ['picture-columns', String(60 + i)]));
    coloured.push(await page.evaluate(fillIn, ['picture-colours', String(8 + i)]));
  }
  const unpacking = median(plain.map((run) => run.unpacked));
  const summing = median(plain.map((run) => run.summed));
  const line = (what, time, of) => {
    if (of !== '') noteRatio(what, Number(of));
    console.log(`${what.padEnd(44)} ${time.toFixed(0).padStart(7)} ${of.padStart(22)}`);
  };
  console.log(`${''.padEnd(44)} ${'ms'.padStart(7)} ${'of the baseline'.padStart(22)}`);
  line('baseline: unpacked and read', unpacking, '');
  line('baseline: channels summed by a plain loop', summing, '');
  const whole = unpacking + summing;
  const share = (time) => `${(time / whole).toFixed(2)}`;
  const first = median(opened) - PAUSE;
  line('file chosen to chart', first, share(first));
  line('another size', median(sized) - PAUSE, share(median(sized) - PAUSE));
  line('another number of colours', median(coloured) - PAUSE, share(median(coloured) - PAUSE));
} finally {
  await browser.close();
  await served.close();
}

/** Runs in the page: 4,000 x 3,000 px of sky, water and grain, as a JPEG. */
async function drawPhotograph() {
  const canvas = new OffscreenCanvas(4000, 3000);
  const context = canvas.getContext('2d');
  const sky = context.createLinearGradient(0, 0, 0, 3000);
  sky.addColorStop(0, '#9cc7e8');
  sky.addColorStop(0.5, '#f6dcb8');
  sky.addColorStop(0.55, '#3d7fae');
  sky.addColorStop(1, '#123a5c');
  context.fillStyle = sky;
  context.fillRect(0, 0, 4000, 3000);
  for (let i = 0; i < 6000; i++) {
    // A fixed sequence: every run has the same picture.
    const [a, b, c] = [(i * 7919) % 4000, (i * 104729) % 3000, (i * 31) % 360];
    context.fillStyle = `hsl(${c} 60% 50% / 40%)`;
    context.fillRect(a, b, 40 + (i % 50), 20 + (i % 30));
  }
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  globalThis.photograph = new File([blob], 'Kittiwake.jpg', { type: 'image/jpeg' });
}

/** Runs in the page. */
async function sumPlainly() {
  const began = performance.now();
  const bitmap = await createImageBitmap(globalThis.photograph);
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
  const read = performance.now();
  let [r, g, b] = [0, 0, 0];
  for (let at = 0; at < data.length; at += 4) {
    r += data[at];
    g += data[at + 1];
    b += data[at + 2];
  }
  const summed = performance.now() - read;
  bitmap.close();
  if (r + g + b === 0) throw new Error('The picture is black.');
  return { unpacked: read - began, summed };
}

/** Runs in the page: until the chart of this file can be used. */
async function choosePhotograph() {
  const maker = document.querySelector('halfhitch-from-picture');
  const input = maker.querySelector('input[type=file]');
  const files = new DataTransfer();
  files.items.add(globalThis.photograph);
  const began = performance.now();
  input.files = files.files;
  input.dispatchEvent(new Event('change'));
  // The chart before goes when the new picture is there.
  const button = () => maker.querySelector('button[type=submit]');
  await new Promise((done) => setTimeout(done, 0));
  while (button()?.getAttribute('aria-disabled') !== 'false') {
    await new Promise((done) => setTimeout(done, 2));
  }
  return performance.now() - began;
}

/** Runs in the page: until the chart with another figure can be used. */
async function fillIn([id, value]) {
  const maker = document.querySelector('halfhitch-from-picture');
  const input = document.getElementById(id);
  const began = performance.now();
  input.value = value;
  input.dispatchEvent(new Event('input'));
  await maker.updateComplete;
  while (maker.querySelector('button[type=submit]').getAttribute('aria-disabled') !== 'false') {
    await new Promise((done) => setTimeout(done, 2));
  }
  return performance.now() - began;
}
