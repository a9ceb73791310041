const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

// What XML 1.0 does not allow even escaped: names from a file must not break a picture.
const FORBIDDEN = /[^\P{Cc}\t\n\r]|[\p{Cs}\ufffe\uffff]/gu;

/** Text made safe between tags and in quoted attributes, in HTML and in SVG. */
export function escapeMarkup(text: string): string {
  return text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (mark) => ESCAPES[mark] as string);
}

/** A colour that can stand in an attribute: `#rrggbb`, or grey where it is none. */
export function safeColour(colour: string): string {
  return /^#[0-9a-f]{6}$/i.test(colour) ? colour.toLowerCase() : '#808080';
}

/** A number with at most two decimals, as short as it can be written. */
export function short(number: number): string {
  return String(Math.round(number * 100) / 100);
}
