import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { demoShown } from './workbench.js';

for (const [name, options] of Object.entries({ desktop: DESKTOP, phone: PHONE })) {
  test(`the page opens without an error, ${name}`, async ({ openPage }) => {
    const page = await openPage('', options);
    expect(await page.title()).toContain('Halfhitch');
  });
}

test('the example says that it is one, and where to go on, until it is changed', async ({
  openPage,
}) => {
  const page = await openPage('', { ...PHONE, reducedMotion: 'reduce' });
  await demoShown(page);
  const line = page.locator('halfhitch-example');
  await line.getByText('This is an example').waitFor();
  expect(await line.getByRole('link').allTextContents()).toEqual([
    'Draw your own',
    'Learn the four knots',
    'Tie it',
  ]);
  // The whole width of the piece is in sight.
  const beyond = await page
    .locator('halfhitch-fabric')
    .evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
  expect(beyond).toBe(0);

  await line.getByRole('link', { name: 'Draw your own' }).click();
  const dialog = page.locator('halfhitch-draw-dialog dialog');
  await dialog.getByRole('heading', { name: 'New chart' }).waitFor();
  // At the thumb, what does not fit is seen to go on.
  await expect.poll(() => page.locator('.draw-tools').getAttribute('data-more')).toBe('after');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });

  await page.getByRole('link', { name: 'Check', exact: true }).click();
  await line.getByText('This is an example').waitFor();
  await page.getByLabel('Edges').selectOption('wrapped');
  await line.waitFor({ state: 'hidden' });
});

test('on a phone the buttons of the picture lie above those that count', async ({ openPage }) => {
  const page = await openPage('#tie', { ...PHONE, reducedMotion: 'reduce' });
  const play = page.getByRole('button', { name: 'Play', exact: true });
  await play.waitFor();
  const bar = page.locator('.tie-actions');
  await expect
    .poll(async () => {
      const [button, actions] = [await play.boundingBox(), await bar.boundingBox()];
      return (button?.y ?? 1e6) + (button?.height ?? 0) < (actions?.y ?? 0);
    })
    .toBe(true);
});
