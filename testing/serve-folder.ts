import { readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.mjs': 'text/javascript',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
};

export interface ServedFolder {
  /** Without a closing slash. */
  readonly address: string;
  close(): void;
}

/** Serves the files of a folder to this machine, as a plain web server does. */
export async function serveFolder(folder: string): Promise<ServedFolder> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = join(folder, decodeURIComponent(path.endsWith('/') ? `${path}index.html` : path));
    // Browsers ask for it on their own, and complain when it is not there.
    if (path === '/favicon.ico') return void response.writeHead(204).end();
    const found = statSync(file, { throwIfNoEntry: false })?.isFile() ?? false;
    response.statusCode = found ? 200 : 404;
    response.setHeader('content-type', TYPES[extname(file)] ?? 'application/octet-stream');
    response.end(found ? readFileSync(file) : undefined);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}
