import { spawn } from 'node:child_process';
import { plainEnvironment } from './environment.mjs';
import { ROOT } from './repository.mjs';

const KEPT = 8192;

/**
 * Runs a program to its end. `output`: 'stderr' sends all it prints to stderr; 'on failure' does
 * so only when it fails; 'none' keeps it quiet; 'inherit' lets it use this process's own outputs.
 * Gives its exit code and the end of what it printed (empty for 'inherit').
 */
export function runProcess(program, args, { cwd = ROOT, env = {}, output = 'stderr' } = {}) {
  return new Promise((resolve, reject) => {
    const inherited = output === 'inherit';
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
      if (output === 'stderr') process.stderr.write(chunk);
    };
    child.stdout?.on('data', pass);
    child.stderr?.on('data', pass);
    child.on('error', reject);
    child.on('close', (exitCode) => {
      // No exit code means that a signal ended it.
      const code = exitCode ?? 1;
      if (code !== 0 && output === 'on failure') process.stderr.write(tail);
      resolve({ code, tail });
    });
  });
}

/** Runs a Node script or a package's JavaScript binary, whatever the system. */
export function runNode(args, options) {
  return runProcess(process.execPath, args, options);
}
