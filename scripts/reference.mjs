// npm run reference: writes the reference of the libraries' entries, from their comments, as web pages
// into the folder `reference`.
import './lib/require-node.mjs';
import { join } from 'node:path';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import { LIBRARIES, packageFolder, ROOT, readJson } from './lib/repository.mjs';

await runMain(async () => {
  await ensureInstalled();
  const { Application, OptionDefaults } = await import('typedoc');
  const output = join(ROOT, 'reference');
  const app = await Application.bootstrap({
    name: 'Halfhitch',
    readme: join(ROOT, 'docs', 'README.md'),
    entryPoints: LIBRARIES.flatMap(entryPoints),
    tsconfig: join(ROOT, 'tsconfig.json'),
    out: output,
    disableSources: true,
    // Those of the manifest of custom elements.
    blockTags: [...OptionDefaults.blockTags, '@fires', '@slot', '@csspart', '@cssprop', '@attr'],
    excludePrivate: true,
    excludeProtected: true,
    githubPages: false,
    logLevel: 'Warn',
    validation: { notExported: false, invalidLink: true, notDocumented: false },
  });
  const project = await app.convert();
  if (project === undefined || app.logger.hasErrors()) throw new Refusal('See above.');
  await app.generateOutputs(project);
  say(`The reference is at ${join(output, 'index.html')}`);
});

/** Sources of the entries of a package that have types. */
function entryPoints(name) {
  const folder = packageFolder(name);
  const { exports } = readJson(join(folder, 'package.json'));
  const sources = Object.values(exports)
    .map((target) => target.types)
    .filter((types) => types !== undefined)
    .map((types) => join(folder, types.replace('./dist/', './src/').replace(/\.d\.ts$/, '.ts')));
  return [...new Set(sources)];
}
