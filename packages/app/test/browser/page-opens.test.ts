import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';

for (const [name, options] of Object.entries({ desktop: DESKTOP, phone: PHONE })) {
  test(`the page opens without an error, ${name}`, async ({ openPage }) => {
    const page = await openPage('', options);
    expect(await page.title()).toContain('Halfhitch');
  });
}
