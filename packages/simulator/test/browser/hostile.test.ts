import { describe } from 'vitest';
import { expect, test } from './bundle-page.js';
import { settled } from './stage.js';

const TEXT = 'b #1f6fb2 lake blue\no #e8742c buoy orange\n\nbbo\nobo\nboo';
const PATTERN =
  'pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\nbobo\n\n\\/\n<\n\\/\n>\n';

/** What a page may write into an attribute by mistake, or be made to write by somebody else. */
const VALUES = [
  '',
  'NaN',
  '-1',
  '1e999',
  '99999999999999999999',
  '__proto__',
  '</script><img src=x onerror="window.hurt=1">',
  '\u202e\ud800\u0000',
  'x'.repeat(2_000),
];

const ATTRIBUTES: Readonly<Record<string, readonly string[]>> = {
  knot: ['kind', 'position', 'speed', 'view', 'lang', 'controls', 'tying-colour', 'held-colour'],
  row: ['row', 'position', 'speed', 'view', 'lang'],
  piece: ['position', 'speed', 'view', 'rows-shown', 'trail-of', 'lang'],
  picture: ['kind', 'moment', 'view', 'tying-colour', 'held-colour', 'label', 'lang'],
  lesson: ['name', 'lang', 'hand'],
};

describe('elements given what they cannot use', () => {
  test('say so in the console, once for each element and value', async ({ openPlain }) => {
    const page = await openPlain('');
    const said: string[] = [];
    page.on('console', (message) => {
      const about = /^(<halfhitch-.*)$/.exec(message.text())?.[1];
      if (message.type() === 'warning' && about !== undefined) said.push(about);
    });
    await page.evaluate(async () => {
      const main = document.querySelector('main') as HTMLElement;
      main.innerHTML = `
        <halfhitch-knot id="crew" kind="left" tying-colour="pink" held-color="#e8742c" view="top"></halfhitch-knot>
        <halfhitch-knot kind="left" controls="some"></halfhitch-knot>
        <halfhitch-knot kind="backward" tying-colour="#1F6FB2" held-colour="#e8742c" view="back" controls="few"></halfhitch-knot>
        <halfhitch-picture kind="left" held-colour="#f00"></halfhitch-picture>
        <halfhitch-lesson hand="both" name="turn"></halfhitch-lesson>`;
    });
    await page.locator('halfhitch-knot canvas').first().waitFor();
    await page.locator('halfhitch-lesson h2').waitFor();
    await page.evaluate(async () => {
      const knot = document.querySelector('halfhitch-knot') as HTMLElement & {
        updateComplete: Promise<unknown>;
        seek(position: number): void;
      };
      // As at every frame of playing, and as a page that writes the same again.
      for (let i = 1; i <= 20; i++) {
        knot.seek(i / 10);
        for (const value of ['#1f6fb2', 'pink']) {
          knot.setAttribute('tying-colour', value);
          await knot.updateComplete;
        }
      }
      knot.remove();
      document.body.append(knot);
      knot.removeAttribute('tying-colour');
      await knot.updateComplete;
    });
    await settled(page);
    // What follows the last stop is the element itself, as the browser writes it.
    expect(said.map((text) => text.replace(/[^.]*$/, '')).sort()).toEqual(
      [
        '<halfhitch-knot id="crew">: kind="left" is not known and taken as forward. Write one of: forward, backward, forward-backward, backward-forward.',
        '<halfhitch-knot id="crew">: tying-colour="pink" is not a colour of the form #rrggbb and shown as grey. Write it like #1f6fb2; names of colours are not read.',
        '<halfhitch-knot id="crew">: the attribute held-color is not read. Write held-colour.',
        '<halfhitch-knot id="crew">: view="top" is not known and taken as front. Write one of: front, back, side, edge, hands.',
        '<halfhitch-knot>: kind="left" is not known and taken as forward. Write one of: forward, backward, forward-backward, backward-forward.',
        '<halfhitch-knot>: controls="some" is not known and taken as all. Write one of: all, few, none.',
        '<halfhitch-picture>: held-colour="#f00" is not a colour of the form #rrggbb and shown as grey. Write it like #1f6fb2; names of colours are not read.',
        '<halfhitch-picture>: "left" is no kind of knot; choose forward, backward, forward-backward, backward-forward.',
        '<halfhitch-lesson>: hand="both" is not known and taken as right. Write one of: right, left.',
      ].sort(),
    );
  });
});

describe('elements given nonsense', () => {
  test('in their attributes go on working, and run nothing', async ({ fill }) => {
    const page = await fill('');
    const worked = await page.evaluate(
      async ({ attributes, values, text, pattern }) => {
        const { load } = window as unknown as {
          load(from: string): Promise<Record<string, (text: string) => Promise<unknown>>>;
        };
        const { planFromText, patternFromText } = await load('/halfhitch.js');
        const plan = await planFromText?.(text);
        const lattice = await patternFromText?.(pattern);
        const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
        const main = document.querySelector('main') as HTMLElement;
        const refused: string[] = [];
        // A row that there is not is an error, told as those of attributes are: by the window.
        const hear = (event: ErrorEvent): void => {
          refused.push(String(event.error));
          event.preventDefault();
        };
        window.addEventListener('error', hear);
        let set = 0;
        for (const [kind, names] of Object.entries(attributes)) {
          const element = document.createElement(`halfhitch-${kind}`) as HTMLElement & {
            play?(): void;
            updateComplete: Promise<unknown>;
          };
          element.style.cssText = 'display:block;inline-size:120px;--halfhitch-stage-height:80px';
          if (kind === 'row') Object.assign(element, { plan });
          if (kind === 'piece') Object.assign(element, { pattern: lattice });
          main.replaceChildren(element);
          await frame();
          for (const name of names) {
            for (const value of values) {
              element.setAttribute(name, value);
              set++;
              if (set % 24 === 0) await frame();
            }
            element.removeAttribute(name);
            await element.updateComplete;
          }
          element.play?.();
          await frame();
        }
        window.removeEventListener('error', hear);
        return { set, refused, hurt: 'hurt' in window };
      },
      { attributes: ATTRIBUTES, values: VALUES, text: TEXT, pattern: PATTERN },
    );
    await settled(page);
    expect(worked.set).toBe(Object.values(ATTRIBUTES).flat().length * VALUES.length);
    expect(worked.hurt).toBe(false);
    for (const error of worked.refused) expect(error).toMatch(/InputError|RangeError/);
    expect(await page.locator('halfhitch-lesson').isVisible()).toBe(true);
  });

  test('in their plans and patterns refuse them in words, or show what can be shown', async ({
    fill,
  }) => {
    const page = await fill('');
    const { refused, shown } = await page.evaluate(
      async ({ text, pattern }) => {
        const { load } = window as unknown as {
          load(from: string): Promise<Record<string, (text: string) => Promise<object>>>;
        };
        const { planFromText, patternFromText } = await load('/halfhitch.js');
        const plan = (await planFromText?.(text)) as {
          steps: { op: Uint8Array; a: Uint16Array; b: Uint16Array; length: number };
          hung: string[];
          rows: number;
        };
        const lattice = (await patternFromText?.(pattern)) as {
          knots: Uint8Array;
          start: Uint8Array;
          rows: number;
        };
        const steps = (change: (columns: typeof plan.steps) => void) => {
          const { op, a, b } = plan.steps;
          // Of the same class, with columns of its own.
          const copy = Object.assign(Object.create(Object.getPrototypeOf(plan.steps)), plan.steps, {
            op: op.slice(),
            a: a.slice(),
            b: b.slice(),
          });
          change(copy);
          return { ...plan, steps: copy };
        };
        const plans: unknown[] = [
          {},
          { ...plan, rows: 1e9 },
          { ...plan, rows: Number.NaN },
          { ...plan, columns: 0 },
          { ...plan, hung: [] },
          { ...plan, hung: [...plan.hung, ...plan.hung] },
          steps((columns) => columns.a.fill(0xffff)),
          steps((columns) => columns.op.fill(9)),
          steps((columns) => columns.op.reverse()),
          steps((columns) => Object.assign(columns, { length: 3 })),
          steps((columns) => Object.assign(columns, { length: 0 })),
        ];
        const patterns: unknown[] = [
          {},
          { ...lattice, rows: 1e9 },
          { ...lattice, strings: -1 },
          { ...lattice, knots: new Uint8Array(2) },
          { ...lattice, knots: lattice.knots.map(() => 77) },
          { ...lattice, start: lattice.start.map(() => 200) },
          { ...lattice, colours: [] },
        ];
        const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
        const main = document.querySelector('main') as HTMLElement;
        const refused: string[] = [];
        let shown = 0;
        for (const kind of ['row', 'piece']) {
          const element = document.createElement(`halfhitch-${kind}`) as HTMLElement & {
            position: number;
            play(): void;
          };
          element.style.cssText = 'display:block;inline-size:120px;--halfhitch-stage-height:80px';
          main.replaceChildren(element);
          await frame();
          for (const given of [
            ...plans.map((one) => ({ plan: one })),
            ...patterns.map((one) => ({ pattern: one })),
            { plan },
            { pattern: lattice },
          ]) {
            try {
              Object.assign(element, given);
              element.position = 2;
              element.play();
              shown++;
            } catch (error) {
              refused.push(String(error));
            }
            for (let i = 0; i < 3; i++) await frame();
          }
        }
        return { refused, shown };
      },
      { text: TEXT, pattern: PATTERN },
    );
    await settled(page);
    expect(refused.length).toBeGreaterThan(10);
    expect(shown).toBeGreaterThanOrEqual(4);
    for (const error of refused)
      expect(error).toMatch(/^(InputError|RangeError|GeometryError): .*\.$/);
    // The last thing given was sound.
    await page.locator('halfhitch-piece canvas').waitFor();
  });
});
