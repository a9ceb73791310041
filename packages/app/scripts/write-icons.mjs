// Writes public/icons from the burgee: `node packages/app/scripts/write-icons.mjs`. The pictures
// are kept in the repository, so that a build needs no browser.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, requireChromium } from '../../../scripts/lib/chromium.mjs';

const PUBLIC = join(import.meta.dirname, '..', 'public');
const PAPER = '#f2f5f5';

// A mask may leave no more than a circle of 80 % of the side (W3C, Web App Manifest).
const ICONS = [
  { name: 'burgee-192.png', size: 192, share: 0.7, corner: 0.18 },
  { name: 'burgee-512.png', size: 512, share: 0.7, corner: 0.18 },
  { name: 'burgee-maskable-512.png', size: 512, share: 0.5, corner: 0 },
  // iOS rounds the corners itself, and shows black through what is see-through.
  { name: 'burgee-180.png', size: 180, share: 0.62, corner: 0 },
];

const burgee = readFileSync(join(PUBLIC, 'burgee.svg'), 'utf8');
mkdirSync(join(PUBLIC, 'icons'), { recursive: true });
const browser = await chromium.launch({
  executablePath: requireChromium(),
  args: [...CHROMIUM_FLAGS],
});
for (const { name, size, share, corner } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<body style="margin:0;background:transparent">
    <div style="display:grid;place-items:center;width:${size}px;height:${size}px;background:${PAPER};border-radius:${corner * size}px">
      <div style="width:${share * size}px;height:${share * size}px">${burgee}</div>
    </div></body>`);
  const picture = await page.screenshot({ omitBackground: true });
  writeFileSync(join(PUBLIC, 'icons', name), picture);
  await page.close();
}
await browser.close();
