import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}

/** What axe finds serious or critical, in short. */
export async function seriousFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const violations = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run(options: object): Promise<{ violations: Violation[] }> };
    };
    return (await axe.run({ resultTypes: ['violations'] })).violations;
  });
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => JSON.stringify(node)).join('; ')}`);
}

/** What goes over the side of the page, in px, and which targets are smaller than 44 px. */
export async function smallTargets(
  page: Page,
): Promise<{ readonly over: number; readonly small: readonly string[] }> {
  return page.evaluate(() => {
    const all = (root: ParentNode): Element[] =>
      [...root.querySelectorAll('*')].flatMap((element) => [
        element,
        ...(element.shadowRoot ? all(element.shadowRoot) : []),
      ]);
    const controls = all(document).filter((element) =>
      element.matches(
        'button, select, summary, .button, .switch label, .check, input[type=range], input[type=text]',
      ),
    );
    return {
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      small: controls
        .map((element) => ({ box: element.getBoundingClientRect(), element }))
        .filter(({ box }) => box.width > 0 && (box.height < 43.5 || box.width < 43.5))
        .map(({ element }) => element.outerHTML.slice(0, 80)),
    };
  });
}
