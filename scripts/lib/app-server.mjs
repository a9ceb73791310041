import { Refusal } from './messages.mjs';
import { packageFolder } from './repository.mjs';

const HOST = '127.0.0.1';
const FIRST_PORT = 4173;

/** Reads `--port N`, `--port=N` and `--open`; anything else is refused. */
export function readServeOptions(args) {
  const options = { port: undefined, open: false };
  const rest = [...args];
  while (rest.length > 0) {
    const word = rest.shift();
    if (word === '--open') options.open = true;
    else if (word === '--port') options.port = readPort(rest.shift());
    else if (word.startsWith('--port=')) options.port = readPort(word.slice('--port='.length));
    else {
      throw new Refusal(
        `Unknown option "${word}". Usage: npm start -- [--port NUMBER] [--open]`,
        2,
      );
    }
  }
  return options;
}

function readPort(text) {
  const port = Number(text);
  if (/^\d+$/.test(text ?? '') && port >= 1 && port <= 65535) return port;
  const given = text === undefined ? 'nothing' : `"${text}"`;
  throw new Refusal(`--port wants a number from 1 to 65535, but got ${given}.`, 2);
}

/**
 * Serves the built app to this machine only. Without a port, the first free one from 4173 on.
 * Gives its address and a function that stops it.
 */
export async function serveApp({ port, open = false } = {}) {
  const { preview } = await import('vite');
  const server = await preview({
    root: packageFolder('app'),
    // What is missing must be missing, not the start page under another name.
    appType: 'mpa',
    logLevel: 'warn',
    preview: { host: HOST, port: port ?? FIRST_PORT, strictPort: port !== undefined, open },
  }).catch((error) => {
    if (/already in use/.test(error.message)) {
      throw new Refusal(
        `Port ${port} is already in use. Choose another with \`npm start -- --port NUMBER\`, ` +
          'or leave it out to take the next free one.',
      );
    }
    if (error.code === 'EACCES') throw new Refusal(`This user may not use port ${port}.`);
    throw error;
  });
  const { port: actual } = server.httpServer.address();
  const base = server.config.base.startsWith('/') ? server.config.base : '/';
  return { address: `http://${HOST}:${actual}${base}`, close: () => server.close() };
}
