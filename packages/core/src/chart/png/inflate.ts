import { Z_BLOCK, Z_OK, Z_STREAM_END, ZStream, zlibInflate, zlibInflateInit } from 'pako';
import { damaged } from './damage.js';

/**
 * Unpacks a zlib stream of which the size is known, and stops as soon as there is more.
 *
 * Packed data come in blocks, and the tables at the head of a block cost far more time than they
 * take room. A hostile file of nothing but heads would keep a maker waiting for minutes, so blocks
 * are counted. Programs that write pictures make a block of some ten thousand samples, some of
 * them two blocks a line.
 *
 * @param size bytes that must come out
 * @param lines lines of pixels they are
 */
export function inflateExactly(packed: Uint8Array, size: number, lines: number): Uint8Array {
  const stream = new ZStream();
  zlibInflateInit(stream);
  stream.input = packed;
  stream.avail_in = packed.length;
  // One more than must come out, to see whether there is more.
  stream.output = new Uint8Array(size + 1);
  stream.avail_out = size + 1;
  let blocks = 256 + 4 * lines + Math.ceil(size / 1024);
  for (;;) {
    const status = zlibInflate(stream, Z_BLOCK);
    if (stream.total_out > size) {
      throw damaged('The picture holds more pixels than its width and height allow.');
    }
    if (status === Z_STREAM_END) break;
    if (status !== Z_OK || stream.avail_in === 0 || blocks-- === 0) {
      throw damaged('The pixels of the picture cannot be unpacked.');
    }
  }
  if (stream.total_out < size) {
    throw damaged('The picture holds fewer pixels than its width and height say.');
  }
  return stream.output.subarray(0, size);
}
