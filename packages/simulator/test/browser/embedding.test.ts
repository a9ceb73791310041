import { readFileSync } from 'node:fs';
import { describe } from 'vitest';
import { knotPictureElement } from '../../src/picture.js';
import { axeFindings, expect, test } from './bundle-page.js';
import { colourCount, pixelsOf, settled } from './stage.js';

interface Described {
  readonly name: string;
  readonly description?: string;
}

interface Manifest {
  readonly modules: readonly {
    readonly declarations: readonly {
      readonly tagName: string;
      readonly attributes: readonly (Described & {
        readonly fieldName: string;
        readonly type: { readonly text: string };
      })[];
      readonly members: readonly { readonly kind: string; readonly name: string }[];
      readonly cssParts: readonly Described[];
      readonly cssProperties: readonly Described[];
      readonly events: readonly Described[];
      readonly slots: readonly Described[];
    }[];
  }[];
}

describe('plain pages', () => {
  test('one script tag is enough, and 3D comes only with an element', async ({ openPlain }) => {
    const page = await openPlain('<p>Nothing to see yet.</p>');
    const loaded: string[] = [];
    page.on('request', (request) => loaded.push(new URL(request.url()).pathname));
    await page.evaluate(() => customElements.whenDefined('halfhitch-knot'));
    await settled(page);
    expect(loaded).toEqual([]);
    await page.evaluate(() => {
      const knot = document.createElement('halfhitch-knot');
      knot.style.width = '400px';
      document.body.append(knot);
    });
    await page.locator('halfhitch-knot canvas').waitFor();
    await settled(page);
    expect(loaded.some((path) => path.includes('3d'))).toBe(true);
    expect(colourCount(await pixelsOf(page.locator('halfhitch-knot canvas')))).toBeGreaterThan(60);
  });

  test('an element of a given height keeps to it: the picture makes room', async ({
    openPlain,
  }) => {
    const page = await openPlain(
      '<halfhitch-knot style="height: 560px; width: 480px"></halfhitch-knot><halfhitch-knot style="width: 480px"></halfhitch-knot>',
    );
    await page.locator('halfhitch-knot canvas').first().waitFor();
    const [given, free] = await page.locator('halfhitch-knot').evaluateAll((knots) =>
      knots.map((knot) => {
        const root = knot.shadowRoot as ShadowRoot;
        const heightOf = (part: string): number =>
          (root.querySelector(part) as Element).getBoundingClientRect().height;
        return { host: knot.clientHeight, all: heightOf('.all'), stage: heightOf('.stage') };
      }),
    );
    expect(given?.host).toBe(560);
    expect(given?.all).toBeLessThanOrEqual(560);
    expect(given?.stage).toBeGreaterThan(140);
    expect(given?.stage).toBeLessThan(free?.stage as number);
  });

  test('what follows the words stays where it is, with little room to spare', async ({
    openPlain,
  }) => {
    const page = await openPlain('<halfhitch-knot style="width: 1000px"></halfhitch-knot>');
    await page.evaluate(() => customElements.whenDefined('halfhitch-knot'));
    const [heights, spare] = await page.evaluate(async () => {
      const knot = document.querySelector('halfhitch-knot') as HTMLElement & {
        kind: string;
        updateComplete: Promise<unknown>;
        seek(position: number): void;
      };
      const caption = knot.shadowRoot?.querySelector('.caption') as HTMLElement;
      const all = new Set<number>();
      let most = 0;
      for (const kind of ['forward', 'backward-forward']) {
        knot.kind = kind;
        for (let at = 0; at <= 2; at += 0.25) {
          knot.seek(at);
          await knot.updateComplete;
          const { bottom, height } = caption.getBoundingClientRect();
          all.add(height);
          const moves = caption.querySelector('ol')?.getBoundingClientRect();
          most = Math.max(most, bottom - (moves?.bottom ?? bottom));
        }
      }
      return [[...all], most] as const;
    });
    expect(heights.length).toBe(1);
    expect(spare).toBeGreaterThanOrEqual(0);
    expect(spare).toBeLessThan(40);
  });

  test('two copies on one page get along', async ({ openPlain }) => {
    const twice =
      '<script type="module" src="/halfhitch.js"></script><script type="module" src="/halfhitch.js?again"></script>';
    const page = await openPlain(
      '<halfhitch-knot id="one"></halfhitch-knot><halfhitch-picture></halfhitch-picture>',
      { script: twice },
    );
    await page.locator('halfhitch-knot canvas').waitFor();
    await page.locator('halfhitch-picture svg').waitFor();
    const both = await page.evaluate(async () => {
      const { load } = window as unknown as {
        load(from: string): Promise<Record<string, unknown>>;
      };
      const [one, other] = [await load('/halfhitch.js'), await load('/halfhitch.js?again')];
      const defined = customElements.get('halfhitch-knot');
      return {
        different: one['HalfhitchKnot'] !== other['HalfhitchKnot'],
        first: defined === one['HalfhitchKnot'] || defined === other['HalfhitchKnot'],
      };
    });
    expect(both).toEqual({ different: true, first: true });
  });

  test('a picture from a server is seen without any script, and kept by the element', async ({
    openPlain,
  }) => {
    const markup = knotPictureElement({ kind: 'backward', tyingColour: '#1f6fb2' });
    const still = await openPlain(markup, { javaScriptEnabled: false });
    const picture = still.locator('halfhitch-picture > svg');
    await picture.waitFor();
    expect(colourCount(await pixelsOf(picture))).toBeGreaterThan(6);
    const live = await openPlain(markup);
    await live.evaluate(() => customElements.whenDefined('halfhitch-picture'));
    await settled(live);
    const kept = live.locator('halfhitch-picture > svg');
    expect(await kept.isVisible()).toBe(true);
    expect(await axeFindings(live, 'halfhitch-picture')).toEqual([]);
    await live.locator('halfhitch-picture').evaluate((element) => {
      element.setAttribute('kind', 'forward');
    });
    await live.locator('halfhitch-picture [part=picture] svg').waitFor();
    const title = live.locator('halfhitch-picture [part=picture] title');
    expect(await title.textContent()).toContain('finished forward knot');
  });

  test('words go from right to left where a language does', async ({ openPlain }) => {
    const page = await openPlain('');
    const seen = await page.evaluate(async () => {
      const { load } = window as unknown as {
        load(from: string): Promise<Record<string, unknown>>;
      };
      const messages = (await load('/halfhitch.js'))['MESSAGES'] as {
        add(language: string, catalogue: Record<string, string>): void;
      };
      messages.add('ar', { 'control.play': 'تشغيل' });
      const knot = document.createElement('halfhitch-knot');
      knot.lang = 'ar-EG';
      knot.style.width = '360px';
      document.body.append(knot);
      await (knot as unknown as { updateComplete: Promise<void> }).updateComplete;
      const root = knot.shadowRoot as ShadowRoot;
      const play = root.querySelector('.play') as HTMLElement;
      const back = play.nextElementSibling as HTMLElement;
      return {
        dir: root.querySelector('.all')?.getAttribute('dir'),
        play: play.textContent?.trim(),
        // The button that follows comes to the left of it, and nothing hangs over.
        leftward: back.getBoundingClientRect().right <= play.getBoundingClientRect().left + 1,
        over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      };
    });
    expect(seen).toEqual({ dir: 'rtl', play: 'تشغيل', leftward: true, over: 0 });
  });
});

/** For each attribute with a choice of words, one that is not the first choice. */
const SAMPLES: Readonly<Record<string, string>> = {
  view: 'back',
  controls: 'few',
  kind: 'backward',
  hand: 'left',
  lang: 'de',
  name: 'turn',
};

describe('attributes and properties', () => {
  test('follow each other, both ways', async ({ openPlain }) => {
    const page = await openPlain('');
    const manifest = JSON.parse(
      readFileSync(new URL('../../dist/custom-elements.json', import.meta.url), 'utf8'),
    ) as Manifest;
    const declared = manifest.modules.flatMap(({ declarations }) => declarations);
    for (const { tagName, attributes } of declared) {
      const wrong = await page.evaluate(
        async ({ tag, given, samples }) => {
          await customElements.whenDefined(tag);
          type Made = HTMLElement & { updateComplete: Promise<unknown> } & Record<string, unknown>;
          const amiss: string[] = [];
          for (const { name, fieldName, type } of given) {
            const text =
              type.text === 'boolean' ? '' : type.text === 'number' ? '1' : samples[name];
            const value =
              type.text === 'boolean' ? true : type.text === 'number' ? 1 : samples[name];
            const sample = text ?? '#123456';
            const byAttribute = document.createElement(tag) as Made;
            byAttribute.setAttribute(name, sample);
            document.body.append(byAttribute);
            await byAttribute.updateComplete;
            // A position beyond what is played is the end of it.
            const length = (byAttribute['length'] as number | undefined) ?? 1;
            const wanted = name === 'position' ? Math.min(1, length) : (value ?? sample);
            if (byAttribute[fieldName] !== wanted) amiss.push(`${name}: ${byAttribute[fieldName]}`);
            const byProperty = document.createElement(tag) as Made;
            byProperty[fieldName] = value ?? sample;
            document.body.append(byProperty);
            await byProperty.updateComplete;
            const shown = name === 'position' ? String(wanted) : sample;
            if (byProperty.getAttribute(name) !== shown) {
              amiss.push(`[${name}]: ${byProperty.getAttribute(name)}`);
            }
            byAttribute.remove();
            byProperty.remove();
          }
          return amiss;
        },
        { tag: tagName, given: attributes, samples: SAMPLES },
      );
      expect([tagName, wrong]).toEqual([tagName, []]);
    }
  });
});

describe('the manifest of the elements', () => {
  test('names every attribute, property and part that is there', async ({ openPlain }) => {
    const page = await openPlain('');
    const manifest = JSON.parse(
      readFileSync(new URL('../../dist/custom-elements.json', import.meta.url), 'utf8'),
    ) as Manifest;
    const declared = manifest.modules.flatMap(({ declarations }) => declarations);
    expect(declared.map(({ tagName }) => tagName).sort()).toEqual([
      'halfhitch-knot',
      'halfhitch-lesson',
      'halfhitch-picture',
      'halfhitch-piece',
      'halfhitch-row',
    ]);
    for (const { tagName, attributes, members, cssParts, ...others } of declared) {
      const real = await page.evaluate(
        async ({ tag, names }) => {
          const Found = await customElements.whenDefined(tag);
          const { observedAttributes } = Found as unknown as { observedAttributes: string[] };
          const element = document.createElement(tag);
          document.body.append(element);
          await (element as unknown as { updateComplete: Promise<void> }).updateComplete;
          const parts = [...(element.shadowRoot?.querySelectorAll('[part]') ?? [])];
          return {
            attributes: observedAttributes,
            missing: names.filter((name) => !(name in element)),
            parts: parts.flatMap((part) => [...part.part]),
          };
        },
        { tag: tagName, names: members.map(({ name }) => name) },
      );
      expect(attributes.map(({ name }) => name).sort()).toEqual([...real.attributes].sort());
      expect(real.missing).toEqual([]);
      const parts = cssParts.map(({ name }) => name);
      for (const part of real.parts) expect(parts).toContain(part);
      const { cssProperties, events, slots } = others;
      for (const list of [attributes, cssParts, cssProperties, events, slots]) {
        for (const { name, description } of list) {
          expect([tagName, name, (description ?? '').length > 3]).toEqual([tagName, name, true]);
        }
      }
    }
  });
});
