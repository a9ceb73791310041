/** An element has warned of so much that more would only fill the console. */
const MOST_WARNINGS = 20;
/** Characters of a value that a warning repeats. */
const MOST_QUOTED = 40;

/** What the colours are called in another spelling of English. */
const MISSPELT = { 'tying-color': 'tying-colour', 'held-color': 'held-colour' } as const;

export const COLOUR = /^#[0-9a-f]{6}$/i;

/**
 * Tells whoever writes a page, in the console, of attributes of an element that it cannot use: of
 * each value once, however often the element is drawn.
 */
export class AttributeWarnings {
  private readonly said = new Set<string>();

  constructor(private readonly element: HTMLElement) {}

  /** Warns of a value that is none of the choices, of which the first is taken instead. */
  oneOf(attribute: string, value: unknown, choices: readonly string[]): void {
    if (isMissing(value) || choices.includes(value as string)) return;
    this.warn(
      `${attribute}=${quoted(value)} is not known and taken as ${choices[0]}. Write one of: ${choices.join(', ')}.`,
    );
  }

  colour(attribute: string, value: unknown): void {
    if (isMissing(value) || COLOUR.test(String(value))) return;
    this.warn(
      `${attribute}=${quoted(value)} is not a colour of the form #rrggbb and shown as grey. Write it like #1f6fb2; names of colours are not read.`,
    );
  }

  /** Warns of attributes that are spelt otherwise here. */
  spelling(): void {
    for (const [written, meant] of Object.entries(MISSPELT)) {
      if (!this.element.hasAttribute(written)) continue;
      this.warn(`the attribute ${written} is not read. Write ${meant}.`);
    }
  }

  warn(message: string): void {
    if (this.said.has(message) || this.said.size >= MOST_WARNINGS) return;
    this.said.add(message);
    const { element } = this;
    const id = element.id === '' ? '' : ` id=${quoted(element.id)}`;
    // The console leads from the element to its place in the page.
    console.warn(`<${element.localName}${id}>: ${message}`, element);
  }
}

/** An attribute that has been taken away is no mistake. */
function isMissing(value: unknown): boolean {
  return value === null || value === undefined;
}

function quoted(value: unknown): string {
  const text = String(value);
  return JSON.stringify(text.length > MOST_QUOTED ? `${text.slice(0, MOST_QUOTED)}…` : text);
}
