import { existsSync } from 'node:fs';
import { runProcess } from './child-process.mjs';
import { Refusal, say } from './messages.mjs';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/**
 * Headless, quiet towards the network, and with WebGL drawn in software. The page around it is painted
 * without the graphics driver: one in software takes ten times as long for that as the plain way.
 */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-compositing',
];

const ADVICE =
  'The browser tests need Chromium. On Debian: `apt-get install chromium`; elsewhere install ' +
  'Chromium or Chrome. If it is in an unusual place, give its path in CHROMIUM_PATH.';

/** The path of the system's Chromium or Chrome, or undefined. */
export function findChromium(environment = process.env, exists = existsSync) {
  const asked = environment.CHROMIUM_PATH;
  if (asked) {
    if (exists(asked)) return asked;
    throw new Refusal(`CHROMIUM_PATH names ${asked}, but there is no such file.`);
  }
  return USUAL_PLACES.find((path) => exists(path));
}

export function requireChromium() {
  const path = findChromium();
  if (!path) throw new Refusal(ADVICE);
  return path;
}

/** Finds Chromium, or installs Debian's where that can be done without asking anybody. */
export async function ensureChromium() {
  if (findChromium()) return;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) throw new Refusal(ADVICE);
  say('Installing Chromium for the browser tests ...');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  // Without a font of some kind all text would be invisible.
  const packages = ['chromium', 'fonts-liberation'];
  for (const args of [
    ['-q', 'update'],
    ['-qq', '-y', '--no-install-recommends', 'install', ...packages],
  ]) {
    const { code } = await runProcess('apt-get', args, { env });
    if (code !== 0) throw new Refusal(`apt-get ${args.join(' ')} failed. ${ADVICE}`);
  }
  if (!findChromium()) throw new Refusal(`Chromium is still not to be found. ${ADVICE}`);
}
