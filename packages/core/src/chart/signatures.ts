/** Kinds of file people take for a chart, by their first bytes. */
const SIGNATURES: readonly (readonly [name: string, ...starts: string[]])[] = [
  ['a JPEG picture', '\xff\xd8\xff'],
  ['a GIF picture', 'GIF87a', 'GIF89a'],
  ['a TIFF picture', 'II*\0', 'MM\0*'],
  ['a Photoshop picture', '8BPS'],
  ['a GIMP picture', 'gimp xcf'],
  ['an icon', '\0\0\x01\0'],
  ['a PDF document', '%PDF-'],
  ['a gzip archive', '\x1f\x8b'],
  ['a ZIP archive or an office document', 'PK\x03\x04'],
];
const BMP = /^BM.{4}\0\0\0\0/s;
const WEBP = /^RIFF.{4}WEBP/s;
const ISO_MEDIA = /^.{4}ftyp(?:avif|avis|heic|heix|mif1)/s;
const MARKUP = /^(?:\xef\xbb\xbf)?\s*<(?:\?xml|!doctype|!--|svg|html)/i;

/** What a file is, as it is called in a message; undefined when it may be a chart. */
export function foreignFile(bytes: Uint8Array): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 512));
  for (const [name, ...starts] of SIGNATURES) {
    if (starts.some((start) => head.startsWith(start))) return name;
  }
  if (BMP.test(head)) return 'a BMP picture';
  if (WEBP.test(head)) return 'a WebP picture';
  if (ISO_MEDIA.test(head)) return 'an AVIF or HEIC picture';
  if (!MARKUP.test(head)) return undefined;
  return /<svg/i.test(head) ? 'an SVG picture' : 'a web page or an XML document';
}
