import { Unzlib } from 'fflate';
import { damaged } from './damage.js';

/** Packed bytes handed over at a time: they can grow a thousandfold before the size is looked at. */
const PORTION = 16 * 1024;

/**
 * Unpacks a zlib stream of which the size is known, and stops as soon as there is more.
 *
 * @param size bytes that must come out
 */
export function inflateExactly(packed: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  let filled = 0;
  const stream = new Unzlib((piece) => {
    if (filled + piece.length > size) {
      throw damaged('The picture holds more pixels than its width and height allow.');
    }
    out.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let at = 0; at < packed.length; at += PORTION) {
      const end = Math.min(at + PORTION, packed.length);
      stream.push(packed.subarray(at, end), end === packed.length);
    }
  } catch (error) {
    if (error instanceof Error && error.name === 'InputError') throw error;
    throw damaged('The pixels of the picture cannot be unpacked.');
  }
  if (filled < size) throw damaged('The picture holds fewer pixels than its width and height say.');
  return out;
}
