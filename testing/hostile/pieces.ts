import fc from 'fast-check';

/** Numbers as text, of the sort that slips past a check: too large, not whole, not quite numbers. */
export const NUMBERS = [
  '0',
  '-0',
  '-1',
  '1e999',
  '-1e999',
  '1e308',
  '5e-324',
  '0.5',
  '01',
  '0x10',
  '1_000',
  '300',
  '301',
  '10001',
  '65536',
  '4294967296',
  '9007199254740993',
  '99999999999999999999999999999999',
  'NaN',
  'Infinity',
  '-Infinity',
  '\u0663',
] as const;

/** Names that mean something to the language's own objects. */
export const NAMES = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  'length',
  'then',
] as const;

/** Characters that are not seen, turn the text round, or are no characters. */
export const CHARACTERS = [
  '\0',
  '\u0008',
  '\u001b[2J',
  '\u007f',
  '\u0085',
  '\u00a0',
  '\u00ad',
  '\u0300'.repeat(40),
  '\u200b',
  '\u202e',
  '\u2066',
  '\u2028',
  '\u2029',
  '\ufeff',
  '\ufffe',
  '\ud800',
  '\udc00',
  '\u{1f6a3}',
  '\u{e0041}',
  '\u{10ffff}',
  '\r',
  '\r\n',
  '\n',
  '\t',
] as const;

export const anyHostilePiece: fc.Arbitrary<string> = fc.constantFrom(
  ...NUMBERS,
  ...NAMES,
  ...CHARACTERS,
  '</script><script>window.hurt=1</script>',
  '../../etc/passwd',
  '%00',
  '{{7*7}}',
  '$&$1',
  '\\u0000',
  'x'.repeat(1_000),
  '#'.repeat(300),
);
