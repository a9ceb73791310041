import { type ChildProcess, spawn } from 'node:child_process';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, requireChromium } from '../../../../scripts/lib/chromium.mjs';

/** A browser of its own, with a profile on the disk, that can be killed at any moment. */
export interface Killable {
  readonly page: Page;
  /** Ends every process of it at once, as a crash or a flat battery would. */
  kill(): Promise<void>;
}

const PATIENCE = 60_000;

/** Starts it with a profile's folder, and opens an address. */
export async function startKillable(profile: string, address: string): Promise<Killable> {
  const started = spawn(
    requireChromium(),
    [
      ...CHROMIUM_FLAGS,
      '--headless',
      '--force-prefers-reduced-motion',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    // A group of its own: all its processes can be killed together, and no others.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const kill = async (): Promise<void> => {
    if (started.exitCode !== null || started.signalCode !== null) return;
    const gone = new Promise((resolve) => started.once('exit', resolve));
    process.kill(-(started.pid as number), 'SIGKILL');
    await gone;
  };
  try {
    const browser = await chromium.connectOverCDP(await debuggerOf(started));
    const [context] = browser.contexts();
    if (context === undefined) throw new Error('The browser has no context.');
    context.setDefaultTimeout(PATIENCE);
    const page = context.pages()[0] ?? (await context.newPage());
    await page.goto(address);
    return { page, kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

function debuggerOf(started: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const timer = setTimeout(() => reject(new Error(`Chromium did not start: ${said}`)), PATIENCE);
    started.stderr?.on('data', (data: Buffer) => {
      said += data.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found === undefined) return;
      clearTimeout(timer);
      resolve(found);
    });
    started.once('exit', () => {
      clearTimeout(timer);
      reject(new Error(`Chromium ended: ${said}`));
    });
  });
}
