// Names come from files: control characters and marks that turn the reading direction round
// could change what a terminal, a page or a picture shows beside them.
const UNPRINTABLE = /[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu;

/** Text from a file as one line that can be shown anywhere. */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, ' ').trim();
}
