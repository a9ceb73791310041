import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CACHE, LIBRARIES, packageFolder, readJson } from './repository.mjs';

/**
 * Compares what each entry of the libraries exports, with its types, with the report kept in the
 * package's folder `api`, or writes the reports anew. The libraries must be built.
 *
 * @returns what differs, one line of text each
 */
export async function checkApi({ write = false } = {}) {
  const extractor = await import('@microsoft/api-extractor');
  const differing = [];
  for (const name of LIBRARIES) {
    const folder = packageFolder(name);
    const reports = join(folder, 'api');
    if (write) rmSync(reports, { recursive: true, force: true });
    mkdirSync(reports, { recursive: true });
    const entries = entriesOf(folder);
    for (const entry of entries) {
      const now = reportNow(extractor, folder, entry);
      if (now !== undefined) differing.push(now);
    }
    const known = new Set(entries.map((entry) => `${entry.report}.api.md`));
    for (const file of readdirSync(reports)) {
      if (!known.has(file)) differing.push(`${name}: api/${file} is of no entry any more`);
    }
  }
  return write ? [] : differing;

  function reportNow({ Extractor, ExtractorConfig }, folder, { types, report }) {
    const reportFolder = join(folder, 'api');
    const temporary = join(CACHE, 'api');
    mkdirSync(temporary, { recursive: true });
    const config = ExtractorConfig.prepare({
      configObject: {
        projectFolder: folder,
        mainEntryPointFilePath: join(folder, types),
        newlineKind: 'lf',
        compiler: { tsconfigFilePath: join(folder, 'tsconfig.json') },
        apiReport: {
          enabled: true,
          reportFolder: temporary,
          reportTempFolder: temporary,
          reportFileName: report,
        },
        docModel: { enabled: false },
        dtsRollup: { enabled: false },
        tsdocMetadata: { enabled: false },
        messages: {
          extractorMessageReporting: { default: { logLevel: 'none' } },
          tsdocMessageReporting: { default: { logLevel: 'none' } },
        },
      },
      configObjectFullPath: join(folder, 'api-extractor.json'),
      packageJsonFullPath: join(folder, 'package.json'),
    });
    const quiet = (message) => {
      message.handled = message.logLevel !== 'error';
    };
    const { succeeded } = Extractor.invoke(config, { localBuild: true, messageCallback: quiet });
    const file = `${report}.api.md`;
    if (!succeeded) return `${file}: the exports could not be read`;
    const now = inOrder(readFileSync(join(temporary, file), 'utf8'));
    const kept = join(reportFolder, file);
    if (write) {
      writeFileSync(kept, now);
      return undefined;
    }
    if (!existsSync(kept)) return `${kept} is missing`;
    const difference = firstDifference(readFileSync(kept, 'utf8'), now);
    return difference === null ? undefined : `${kept}, ${difference}`;
  }
}

/** The compiler lists the words of a union in the order in which it met them, which is no change. */
function inOrder(report) {
  return report.replace(/"[^"\n]*"(?: \| "[^"\n]*")+/g, (union) =>
    union.split(' | ').sort().join(' | '),
  );
}

/** Characters of a line that are shown from where it differs. */
const SHOWN = 160;

function firstDifference(before, after) {
  if (before === after) return null;
  const [old, now] = [before, after].map((text) => text.split('\n'));
  const at = now.findIndex((line, i) => line !== old[i]);
  if (at < 0) return `line ${now.length + 1} and what follows is gone`;
  const lines = [old[at] ?? '', now[at]];
  const same = [...lines[1]].findIndex((letter, i) => letter !== lines[0][i]);
  const from = Math.max(0, (same < 0 ? lines[1].length : same) - SHOWN / 4);
  const [was, is] = lines.map((line) => JSON.stringify(line.slice(from, from + SHOWN)));
  return `line ${at + 1}: ${was} is now ${is}`;
}

/** The entries of a package that have types of their own, each with the name of its report. */
function entriesOf(folder) {
  const { exports } = readJson(join(folder, 'package.json'));
  return Object.entries(exports)
    .filter(([, target]) => typeof target === 'object' && target.types !== undefined)
    .map(([path, target]) => ({
      types: target.types,
      report: path === '.' ? 'index' : path.slice(2).replaceAll('/', '-'),
    }))
    .filter(({ types }, place, all) => all.findIndex((other) => other.types === types) === place);
}
