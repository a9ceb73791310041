// Time to the first picture, cost of a frame beside a bare three.js scene of as many triangles in
// the same run, and sizes of the bundle. Drawn in software, so only the ratios mean anything.
import { readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../../../scripts/lib/build-targets.mjs';
import { CHROMIUM_FLAGS, requireChromium } from '../../../scripts/lib/chromium.mjs';
import { noteRatio } from '../../../testing/bench-ratios.mjs';

const BUNDLE = new URL('../dist/bundle/', import.meta.url);
const THREE = createRequire(import.meta.url)
  .resolve('three')
  .replace(/three\.cjs$/, '');
// What the page imports, from the addresses that `page` below answers.
const SERVED = { elements: '/halfhitch.js', three: '/three/three.module.js' };
const PAGE =
  '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><script type="module" src="/halfhitch.js"></script><body></body>';

const page = (path) => {
  if (path === '/') return { type: 'text/html', body: PAGE };
  const three = /^\/three\/([\w.]+)$/.exec(path);
  const from = three === null ? new URL(`.${path}`, BUNDLE) : `${THREE}${three[1]}`;
  return { type: 'text/javascript', body: readFileSync(from) };
};

const server = createServer((request, response) => {
  const { type, body } = page(request.url.split('?')[0]);
  response.setHeader('content-type', type);
  response.end(body);
});

await ensureBuilt('elements');
console.log('file                              gzip kB');
for (const name of readdirSync(BUNDLE).filter((file) => file.endsWith('.js'))) {
  const size = gzipSync(readFileSync(new URL(name, BUNDLE)), { level: 9 }).length / 1000;
  console.log(`${name.padEnd(32)} ${size.toFixed(1).padStart(8)}`);
}

await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
const address = `http://127.0.0.1:${server.address().port}/`;
const browser = await chromium.launch({
  executablePath: requireChromium(),
  args: [...CHROMIUM_FLAGS],
});
try {
  const first = await firstPicture();
  console.log(`\nfirst picture of a knot: median ${first.toFixed(0)} ms of 5 new pages`);
  console.log('\nframe                       triangles     ms   bare ms   ratio');
  // With a word, only what it is in.
  const asked = process.argv[2] ?? '';
  for (const subject of [
    'knot, still',
    'knot, moving',
    'row, still',
    'row, moving',
    'piece 60 x 300',
    'piece, diagonal, 60 strings x 300',
  ]) {
    if (!subject.includes(asked)) continue;
    const { triangles, ours, bare } = await frames(subject);
    const ratio = ours / bare;
    noteRatio(subject, ratio);
    console.log(
      `${subject.padEnd(26)} ${String(triangles).padStart(10)} ${ours.toFixed(1).padStart(6)} ${bare.toFixed(1).padStart(9)} ${ratio.toFixed(2).padStart(7)}`,
    );
  }
} finally {
  await browser.close();
  server.close();
}

async function firstPicture() {
  const times = [];
  for (let i = 0; i < 5; i++) {
    const tab = await browser.newPage();
    await tab.goto(address);
    times.push(
      await tab.evaluate(async () => {
        await customElements.whenDefined('halfhitch-knot');
        const began = performance.now();
        const knot = document.createElement('halfhitch-knot');
        document.body.append(knot);
        while (
          knot.shadowRoot?.querySelector('canvas') === undefined ||
          knot.shadowRoot.querySelector('canvas') === null
        ) {
          await new Promise((resolve) => requestAnimationFrame(resolve));
        }
        await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
        return performance.now() - began;
      }),
    );
    await tab.close();
  }
  return times.sort((a, b) => a - b)[2];
}

async function frames(subject) {
  const tab = await browser.newPage({ viewport: { width: 700, height: 900 } });
  await tab.goto(address);
  const result = await tab.evaluate(measure, { subject, served: SERVED });
  await tab.close();
  return result;
}

/** Runs in the page. */
async function measure({ subject, served }) {
  const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  const { patternFromText, planFromText } = await import(served.elements);
  const legend = 'b #1f6fb2 lake blue\no #e8742c buoy orange\n\n';
  const lines = (rows, columns) =>
    Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => ((r + c) % 12 < 6 ? 'b' : 'o')).join(''),
    ).join('\n');
  const tag = subject.split(/[ ,]/)[0];
  const element = document.createElement(`halfhitch-${tag}`);
  element.style.width = '640px';
  if (tag === 'row') {
    element.plan = await planFromText(legend + lines(3, 12));
    element.row = 1;
  }
  if (tag === 'piece') {
    element.rowsShown = 0;
    if (subject.includes('diagonal')) {
      // Crossings, with a knot that comes back at every eleventh place.
      const rows = Array.from({ length: 300 }, (_, r) =>
        Array.from({ length: 30 - (r % 2) }, (_, p) => ((r + p) % 11 === 0 ? '<' : '\\')).join(' '),
      );
      const start = Array.from({ length: 60 }, (_, s) => (s % 12 < 6 ? 'b' : 'o')).join('');
      element.pattern = await patternFromText(
        `pattern diagonal\n${legend}${start}\n\n${rows.join('\n')}`,
      );
    } else element.plan = await planFromText(legend + lines(300, 60));
  }
  document.body.append(element);
  while (!element.shadowRoot?.querySelector('canvas')) await frame();
  let drawn = 0;
  const { prototype } = WebGL2RenderingContext;
  const draw = prototype.drawElements;
  prototype.drawElements = function (mode, count, ...rest) {
    drawn += count / 3;
    return draw.call(this, mode, count, ...rest);
  };
  // Chunks of a piece are built over many frames.
  for (let same = 0, before = -1; same < 2; ) {
    drawn = 0;
    element.draw();
    await frame();
    same = drawn === before ? same + 1 : 0;
    before = drawn;
  }
  const canvas = element.shadowRoot.querySelector('canvas.threads');
  const finish = (made) => made.getContext('2d').getImageData(0, 0, 1, 1);
  const moving = subject.endsWith('moving');
  const time = async (make, many = tag === 'piece' ? 5 : 20) => {
    const times = [];
    for (let i = 0; i < many; i++) {
      const began = performance.now();
      make(i);
      times.push(performance.now() - began);
      if (i % 5 === 4) await frame();
    }
    return times.sort((a, b) => a - b)[Math.floor(many / 2)];
  };
  drawn = 0;
  element.draw();
  const all = Math.round(drawn);
  const ours = await time((i) => {
    if (moving) element.seek(0.3 + 0.02 * i);
    element.draw();
    finish(canvas);
  });
  const { width, height } = canvas;
  element.remove();
  await frame();

  const three = await import(served.three);
  const sheet = document.createElement('canvas');
  const renderer = new three.WebGLRenderer({ canvas: sheet, antialias: true, alpha: true });
  renderer.setPixelRatio(1);
  renderer.setSize(width, height, false);
  const shadows = tag !== 'piece';
  renderer.shadowMap.enabled = shadows;
  const scene = new three.Scene();
  const camera = new three.PerspectiveCamera(24, width / height, 0.1, 100);
  camera.position.z = 30;
  const key = new three.DirectionalLight('#ffffff', 2.5);
  key.castShadow = shadows;
  key.shadow.mapSize.set(1024, 1024);
  key.position.set(-5, 8, 16);
  scene.add(key, new three.HemisphereLight('#ffffff', '#888888', 1.3));
  const triangles = shadows ? all / 2 : all;
  const bends = new three.CatmullRomCurve3(
    Array.from(
      { length: 40 },
      (_, i) => new three.Vector3(3 * Math.cos(i), 5.4 - 0.28 * i, 2 * Math.sin(i)),
    ),
  );
  const along = Math.max(2, Math.round(triangles / (2 * 16)));
  const mesh = new three.Mesh(
    new three.TubeGeometry(bends, along, 0.5, 16),
    new three.MeshLambertMaterial({ color: '#2f6f9f' }),
  );
  mesh.castShadow = shadows;
  mesh.receiveShadow = shadows;
  scene.add(mesh);
  const copy = document.createElement('canvas');
  copy.width = width;
  copy.height = height;
  const bare = await time(() => {
    renderer.render(scene, camera);
    copy.getContext('2d').drawImage(sheet, 0, 0);
    finish(copy);
  });
  return { triangles: all, ours, bare };
}
