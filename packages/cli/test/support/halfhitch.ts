import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import { ensureBuilt } from '../../../../scripts/lib/build-targets.mjs';

/** The built tool: what people run, not its sources. */
export const TOOL = fileURLToPath(new URL('../../dist/halfhitch.js', import.meta.url));

export interface Outcome {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
  readonly bytes: Buffer;
}

export interface RunOptions {
  readonly cwd?: string;
  readonly input?: string | Uint8Array;
  readonly tool?: string;
}

/** Runs the tool in a process of its own, to its end. */
export function halfhitch(words: readonly string[], options: RunOptions = {}): Promise<Outcome> {
  const child = spawn(process.execPath, [options.tool ?? TOOL, ...words], {
    cwd: options.cwd,
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  // A tool that refuses before it has read everything closes its input.
  child.stdin.on('error', () => {});
  child.stdin.end(options.input ?? '');
  return outcomeOf(child);
}

export function outcomeOf(child: ChildProcess): Promise<Outcome> {
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout?.on('data', (chunk: Buffer) => out.push(chunk));
  child.stderr?.on('data', (chunk: Buffer) => err.push(chunk));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => {
      const bytes = Buffer.concat(out);
      const stderr = Buffer.concat(err).toString();
      resolve({ code, signal, stdout: bytes.toString(), stderr, bytes });
    });
  });
}

/** Builds the tool when it is stale, and gives a folder for the tests of one file. */
export function useTool(): { readonly folder: string; path(name: string): string } {
  const folder = mkdtempSync(join(tmpdir(), 'halfhitch-test-'));
  beforeAll(() => ensureBuilt('cli'), 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return { folder, path: (name) => join(folder, name) };
}

/** Whether an outcome is a refusal as it should be: code 2, and one line of words on stderr. */
export function isPlainRefusal({ code, signal, stdout, stderr }: Outcome): boolean {
  return (
    code === 2 &&
    signal === null &&
    stdout === '' &&
    /^halfhitch: [^\n]+\n$/.test(stderr) &&
    !/\n\s+at |Error:|should not have happened/.test(stderr)
  );
}
