const LONGEST = 60;

/** Names that Windows keeps for devices, whatever follows the full stop. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A name for a file of a piece: letters, digits, blanks and hyphens of the piece's own name, since
 * anything else means something to one system or another.
 *
 * @param ending with its full stop
 */
export function fileNameOf(name: string, ending: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, ' ')
    .trim();
  const short = [...plain].slice(0, LONGEST).join('').trim().replaceAll(' ', '-').toLowerCase();
  return `${short === '' || DEVICES.test(short) ? 'halfhitch-chart' : short}${ending}`;
}
