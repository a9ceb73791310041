import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { sourceAliases } from '../../../scripts/lib/source-aliases.mjs';

/** Its name beside the app's other files; src/keep/tutorial-page.ts fetches it. */
const FILE = 'tutorial-page.html';
const ENTRY = join(import.meta.dirname, '..', 'src', 'keep', 'tutorial', 'main.ts');

/**
 * Makes the page that the app fills with a pattern and hands out as one file: the simulator and
 * what it takes in a single script, which alone the page's own policy lets run, by its hash.
 */
export function tutorialPage(): Plugin {
  return {
    name: 'halfhitch-tutorial-page',
    configureServer(server) {
      server.middlewares.use(`/${FILE}`, (_request, response, next) => {
        page().then((html) => {
          response.setHeader('Content-Type', 'text/html; charset=utf-8');
          response.end(html);
        }, next);
      });
    },
    async generateBundle() {
      this.emitFile({ type: 'asset', fileName: FILE, source: await page() });
    },
  };
}

async function page(): Promise<string> {
  const { script, licences } = await bundle();
  const hash = createHash('sha256').update(script).digest('base64');
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${hash}'`,
    'img-src blob: data:',
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
    'trusted-types lit-html',
  ].join('; ');
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Halfhitch</title>
<script type="application/json" id="halfhitch-pattern"></script>
</head>
<body>
<noscript>This page shows how to knot a bracelet, knot by knot, and needs JavaScript for that. It fetches nothing.</noscript>
<script>${script}</script>
<script type="text/plain" id="licences">
${licences}
</script>
</body>
</html>
`;
}

/** The script and the licences of what is in it, with nothing in them that could end their elements. */
async function bundle(): Promise<{ readonly script: string; readonly licences: string }> {
  const result = await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    resolve: { alias: sourceAliases },
    build: {
      write: false,
      license: { fileName: 'licences.md' },
      target: 'es2022',
      minify: true,
      modulePreload: { polyfill: false },
      lib: { entry: ENTRY, formats: ['iife'], name: 'halfhitchTutorial' },
      rolldownOptions: { output: { codeSplitting: false }, checks: { pluginTimings: false } },
    },
  });
  const [{ output }] = (Array.isArray(result) ? result : [result]) as [
    { output: readonly { type: string; fileName: string; code?: string; source?: unknown }[] },
  ];
  const chunks = output.filter(({ type }) => type === 'chunk');
  if (chunks.length !== 1 || chunks[0]?.code === undefined) {
    throw new Error(`The tutorial's script came out in ${chunks.length} parts.`);
  }
  const licences = output.find(({ fileName }) => fileName === 'licences.md')?.source;
  if (licences === undefined) throw new Error('The tutorial has no page of licences.');
  return { script: inside(chunks[0].code), licences: inside(String(licences)) };
}

function inside(text: string): string {
  return text
    .replace(/<\/(?=script)/gi, '<\\/')
    .replaceAll('<!--', '<\\!--')
    .trim();
}
