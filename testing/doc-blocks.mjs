import { existsSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { filesBelow, PACKAGES, packageFolder, ROOT } from '../scripts/lib/repository.mjs';

/**
 * A block of code in the documentation: its file, the line it begins on, its language, its text.
 *
 * @typedef {{ file: string, line: number, language: string, text: string }} DocBlock
 */

/** Every page that users or contributors read. */
export function documentationFiles() {
  return [
    join(ROOT, 'README.md'),
    join(ROOT, 'DEVELOPERS.md'),
    join(ROOT, 'SECURITY.md'),
    ...filesBelow(join(ROOT, 'docs')).filter((file) => file.endsWith('.md')),
    ...PACKAGES.map((name) => join(packageFolder(name), 'README.md')),
  ].filter(existsSync);
}

/**
 * All blocks of code in the documentation.
 *
 * @returns {DocBlock[]}
 */
export function documentationBlocks() {
  return documentationFiles().flatMap((path) => {
    const lines = readFileSync(path, 'utf8').split('\n');
    const blocks = [];
    for (let i = 0; i < lines.length; i++) {
      const fence = /^```(\w*)$/.exec(lines[i]);
      if (fence === null) continue;
      const end = lines.indexOf('```', i + 1);
      const text = `${lines.slice(i + 1, end).join('\n')}\n`;
      blocks.push({ file: relative(ROOT, path), line: i + 1, language: fence[1], text });
      i = end;
    }
    return blocks;
  });
}

/** Where a block stands, for messages. */
export function placeOf({ file, line }) {
  return `${file}:${line}`;
}

/** Whether a block is HTML, or JavaScript that needs a page. */
export function needsPage({ language, text }) {
  if (language !== 'js') return language === 'html';
  return /\bdocument\b|import '@halfhitch\/simulator'|from '@halfhitch\/simulator'|from '\.\//.test(
    text,
  );
}
