/** What fills the places of a message, by their names. */
export type Values = Readonly<Record<string, string | number>>;

/** Says a message of a catalogue with its places filled. */
export type Say<Key extends string> = (key: Key, values?: Values) => string;

/** Some or all messages of one language. Places are written `{name}`. */
export type Catalogue<Key extends string> = Readonly<Partial<Record<Key, string>>>;

/** Longest translation of one message, in characters. */
const LONGEST = 2000;

/** Messages in several languages, with English for whatever a language does not say. */
export class Messages<Key extends string> {
  private readonly languages = new Map<string, Catalogue<Key>>();

  constructor(private readonly english: Readonly<Record<Key, string>>) {
    this.languages.set('en', english);
  }

  get keys(): readonly Key[] {
    return Object.keys(this.english) as Key[];
  }

  /**
   * Adds a language, or more messages to one that is there. A language may be added in parts;
   * what it lacks is said in English.
   *
   * @param language as in HTML: `de`, `pt-BR`
   * @throws RangeError when a message has places that the English one has not, or is too long
   */
  add(language: string, catalogue: Catalogue<Key>): void {
    for (const [key, text] of Object.entries<string | undefined>(catalogue)) {
      const english = (this.english as Record<string, string | undefined>)[key];
      if (english === undefined || text === undefined) continue;
      if (text.length > LONGEST)
        throw new RangeError(
          `Message ${key} has ${text.length} characters; the most is ${LONGEST}.`,
        );
      const known = placesOf(english);
      const strange = placesOf(text).find((place) => !known.includes(place));
      if (strange !== undefined) {
        throw new RangeError(
          `Message ${key} has a place {${strange}} that is never filled; its places are ` +
            `${known.map((place) => `{${place}}`).join(', ') || 'none'}.`,
        );
      }
    }
    const tag = language.toLowerCase();
    this.languages.set(tag, { ...this.languages.get(tag), ...catalogue });
  }

  /** The nearest language there is to the one asked for: de-AT, then de, then English. */
  languageFor(asked: string): string {
    let tag = asked.trim().toLowerCase().replaceAll('_', '-');
    while (tag !== '') {
      if (this.languages.has(tag)) return tag;
      tag = tag.slice(0, Math.max(0, tag.lastIndexOf('-')));
    }
    return 'en';
  }

  in(asked: string): Say<Key> {
    const catalogue = this.languages.get(this.languageFor(asked));
    return (key, values = {}) => fill(catalogue?.[key] ?? this.english[key], values);
  }
}

/** Names of the places in a message, in order. */
export function placesOf(message: string): string[] {
  return [...message.matchAll(/\{(\w+)\}/g)].map((match) => match[1] as string);
}

function fill(message: string, values: Values): string {
  return message.replace(/\{(\w+)\}/g, (place, name: string) => String(values[name] ?? place));
}

/** Languages written from right to left, by their first subtag. */
const RIGHT_TO_LEFT = new Set([
  'ar',
  'arc',
  'ckb',
  'dv',
  'fa',
  'he',
  'ks',
  'ps',
  'sd',
  'ug',
  'ur',
  'yi',
]);

export function directionOfText(language: string): 'ltr' | 'rtl' {
  return RIGHT_TO_LEFT.has(language.toLowerCase().split(/[-_]/)[0] ?? '') ? 'rtl' : 'ltr';
}

/** The language an element is in: its own `lang`, or that of what it stands in. */
export function languageOf(element: Element): string {
  for (let at: Element | null = element; at !== null; ) {
    // A property that has just been set is not an attribute yet.
    const lang = at instanceof HTMLElement ? at.lang : at.getAttribute('lang');
    if (lang) return lang;
    const root: Node = at.getRootNode();
    at = at.parentElement ?? (root instanceof ShadowRoot ? root.host : null);
  }
  return 'en';
}
