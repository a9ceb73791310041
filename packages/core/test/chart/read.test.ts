import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/index.js';
import { refusal } from '../support/refusal.js';
import { writePng } from '../support/write-png.js';

const utf8 = (text: string) => new TextEncoder().encode(text);
const latin1 = (text: string) => Uint8Array.from(Buffer.from(text, 'latin1'));
const TEXT = 'a #000\n\naa\n';
const DOCUMENT =
  '{"format":"halfhitch-chart","version":1,"colours":[{"key":"a","hex":"#000"}],"rows":["aa"]}';
const PICTURE = writePng({ width: 2, height: 1, depth: 8, colourType: 0, samples: [0, 0] });

describe('a chart file', () => {
  it.each([
    ['PNG', PICTURE],
    ['text', utf8(TEXT)],
    ['text with a mark', utf8(`\uFEFF${TEXT}`)],
    ['document', utf8(DOCUMENT)],
    ['document with a mark', utf8(`\uFEFF \n${DOCUMENT}`)],
  ])('is told by what it holds: %s', (_, bytes) => {
    const { chart } = readChart(bytes, 'crews/Kittiwake 8.final.dat');
    expect(chart).toMatchObject({ name: 'Kittiwake 8.final', rows: 1, columns: 2 });
    expect(chart.colours[0]?.hex).toBe('#000000');
  });

  it.each(['{ #000', '{ = #000', '[#000', '{: #000'])('may use a brace as a key: %s', (legend) => {
    const key = legend[0] as string;
    expect(readChart(utf8(`${legend}\n\n${key}`), '').chart.colours[0]?.key).toBe(key);
  });

  it('keeps the name it gives itself', () => {
    expect(readChart(utf8(`name Otter\n${TEXT}`), 'x.txt').chart.name).toBe('Otter');
  });

  it.each([
    [latin1('\xff\xd8\xff\xe0'), 'JPEG'],
    [utf8('GIF89a...'), 'GIF'],
    [utf8('RIFF\0\0\0\0WEBPVP8 '), 'WebP'],
    [latin1('BM\x46\0\0\0\0\0\0\0'), 'BMP'],
    [utf8('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'SVG'],
    [utf8('<?xml version="1.0"?>\n<svg/>'), 'SVG'],
    [utf8('<!DOCTYPE html><title>x</title>'), 'web page'],
    [utf8('%PDF-1.7'), 'PDF'],
    [gzipSync('x'), 'gzip'],
    [utf8('PK\x03\x04'), 'ZIP'],
    [latin1('\0\0\0\x20ftypavif'), 'AVIF'],
  ])('that is no chart is refused for what it is: %#', (bytes, name) => {
    const error = refusal(() => readChart(bytes, 'heron.file'));
    expect(error.code).toBe('not-a-chart');
    expect(error.message).toMatch(new RegExp(`^heron\\.file: .*${name}.*PNG`));
  });

  it('that is a plan is refused with advice', () => {
    const plan = utf8('{"format": "halfhitch-plan"}');
    expect(refusal(() => readChart(plan, 'p.json')).message).toContain('This is a plan');
  });

  it('that is empty or too large is refused', () => {
    expect(refusal(() => readChart(new Uint8Array(0), 'x')).code).toBe('empty');
    const large = new Uint8Array(33 * 1024 * 1024).fill(0x20);
    expect(refusal(() => readChart(large, 'x')).message).toMatch(/33 MiB.*32 MiB.*16 MiB/);
    large.set(PICTURE);
    expect(refusal(() => readChart(large, 'x')).message).toMatch(/33 MiB.*16 MiB/);
  });
});
