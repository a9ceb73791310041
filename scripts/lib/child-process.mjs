import { spawn } from 'node:child_process';
import { plainEnvironment } from './environment.mjs';
import { ROOT } from './repository.mjs';

const KEPT = 8192;

/**
 * Runs a program to its end. Both of its outputs go to stderr, unless `stdout: 'inherit'`.
 * Gives its exit code and the end of what it printed (empty where stdout is inherited).
 */
export function runProcess(program, args, { cwd = ROOT, env = {}, stdout = 'stderr' } = {}) {
  return new Promise((resolve, reject) => {
    const inherited = stdout === 'inherit';
    const child = spawn(program, args, {
      cwd,
      env: { ...plainEnvironment(), ...env },
      stdio: inherited ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'],
      // npx and the like are command files on Windows, which only a shell can start.
      shell: process.platform === 'win32' && !program.endsWith('.exe'),
    });
    let tail = '';
    const pass = (chunk) => {
      tail = (tail + chunk).slice(-KEPT);
      process.stderr.write(chunk);
    };
    child.stdout?.on('data', pass);
    child.stderr?.on('data', pass);
    child.on('error', reject);
    child.on('close', (code, signal) => resolve({ code: code ?? (signal ? 1 : 0), tail }));
  });
}

/** Runs a Node script or a package's JavaScript binary, whatever the system. */
export function runNode(args, options) {
  return runProcess(process.execPath, args, options);
}
