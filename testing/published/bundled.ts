import { build } from 'vite';
import type { FreshProject } from './fresh-project.js';

export interface Chunk {
  readonly fileName: string;
  readonly code: string;
  readonly imports: readonly string[];
  readonly isEntry: boolean;
}

/** Bundles a page or a module of the project as its owner would; the chunks, and what is written. */
export async function bundled(
  project: FreshProject,
  input: string,
  options: { readonly write?: boolean } = {},
): Promise<Chunk[]> {
  const result = await build({
    root: project.folder,
    configFile: false,
    logLevel: 'silent',
    build: {
      target: 'es2022',
      write: options.write ?? false,
      emptyOutDir: true,
      modulePreload: false,
      rolldownOptions: { input: project.path(input) },
    },
  });
  return [result]
    .flat()
    .flatMap((one) => ('output' in one ? one.output : []))
    .filter((output) => output.type === 'chunk');
}

/** The chunks that a page loads before anything asks for more. */
export function loadedAtFirst(chunks: readonly Chunk[]): Chunk[] {
  const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const found = new Set<Chunk>();
  const follow = (chunk: Chunk | undefined): void => {
    if (chunk === undefined || found.has(chunk)) return;
    found.add(chunk);
    for (const next of chunk.imports) follow(byName.get(next));
  };
  follow(chunks.find(({ isEntry }) => isEntry));
  return [...found];
}
