/** Where the number of JSON (RFC 8259) that begins here ends; -1 when none begins here. */
export function numberEnd(text: string, start: number): number {
  const whole = text[start] === '-' ? start + 1 : start;
  let end = text[whole] === '0' ? whole + 1 : digitsEnd(text, whole);
  if (end === whole) return -1;
  if (text[end] === '.') {
    const fraction = end + 1;
    end = digitsEnd(text, fraction);
    if (end === fraction) return -1;
  }
  if (text[end] === 'e' || text[end] === 'E') {
    const sign = text[end + 1];
    const exponent = sign === '+' || sign === '-' ? end + 2 : end + 1;
    end = digitsEnd(text, exponent);
    if (end === exponent) return -1;
  }
  return end;
}

function digitsEnd(text: string, start: number): number {
  let end = start;
  let code = text.charCodeAt(end);
  while (code >= 0x30 && code <= 0x39) code = text.charCodeAt(++end);
  return end;
}
