import { InputError, printChartDocument, printDiagonalDocument } from '@halfhitch/core';
import fc from 'fast-check';
import { deflate } from 'pako';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { hostileJson } from '../../../../testing/hostile/json.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import { hostileText } from '../../../../testing/hostile/text.js';
import { chartAsKnotted } from '../../src/keep/as-knotted.js';
import { EMBEDDED_ID, embeddedDocument, jsonForMarkup } from '../../src/keep/embedded.js';
import { ownFile } from '../../src/keep/kinds-of-file.js';
import { readLink } from '../../src/keep/pattern-link.js';
import { printProjectDocument, readProjectDocument } from '../../src/keep/project-document.js';
import { readOpened } from '../../src/work/read-opened.js';
import { anyPattern } from '../diagonal/projects.js';
import { aChart } from '../keep/charts.js';
import { anyProject } from '../store/samples.js';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Opens a file as the workbench does: by what it is. */
function open(bytes: Uint8Array): unknown {
  switch (ownFile(bytes)) {
    case 'project':
      return readProjectDocument(new TextDecoder().decode(bytes), 0);
    case 'embedded':
      return readOpened(utf8(embeddedDocument(new TextDecoder().decode(bytes))), 'hostile');
    default:
      return readOpened(bytes, 'hostile');
  }
}

const anyDocument = fc.oneof(
  aChart().map(printChartDocument),
  anyPattern.map(printDiagonalDocument),
);

const anyProjectDocument = fc
  .tuple(
    anyProject,
    fc.option(
      fc.record({
        done: fc.nat(30),
        columns: fc.integer({ min: 1, max: 12 }),
        seconds: fc.nat(),
        marks: fc.array(fc.nat(), { maxLength: 5 }).map((marks) => Uint32Array.from(marks)),
      }),
    ),
  )
  .map(([project, progress]) => printProjectDocument(project, progress));

describe('files made hostile are opened within the limits or refused in plain words', () => {
  it('projects', () => {
    fc.assert(
      fc.property(hostileJson(anyProjectDocument), (text) => {
        const read = answerOrRefusal(InputError, () => readProjectDocument(text, 0));
        if (read === null) return;
        const { id, created, changed, cut } = read.project;
        expect(id).toMatch(/^[0-9a-zA-Z-]{8,64}$/);
        expect(Number.isFinite(new Date(created).getTime() + new Date(changed).getTime())).toBe(
          true,
        );
        for (const setting of Object.values(cut)) expect(setting.length).toBeLessThanOrEqual(12);
        // What was read can be kept and shared again.
        const again = readProjectDocument(printProjectDocument(read.project, read.progress), 0);
        const { cut: _, ...kept } = again.project;
        expect(kept).toMatchObject(
          read.project.kind === 'alpha'
            ? { id, chart: chartAsKnotted(read.project) }
            : { id, kind: 'diagonal' },
        );
      }),
      fuzzRuns(200),
    );
  });

  it('pictures and pages with a chart inside', () => {
    const page = anyDocument.map(
      (json) =>
        `<!doctype html>\n<html><title>Heron</title><script type="application/json" id="${EMBEDDED_ID}">${jsonForMarkup(json)}</script></html>`,
    );
    fc.assert(
      fc.property(fc.oneof(hostileText(page), hostileJson(page)), (text) => {
        const bytes = utf8(text);
        const before = bytes.slice();
        answerOrRefusal(InputError, () => open(bytes));
        expect(Buffer.compare(bytes, before)).toBe(0);
      }),
      fuzzRuns(200),
    );
  });
});

describe('links made hostile are opened or refused in plain words', () => {
  const packed = (text: string) => Buffer.from(deflate(utf8(text))).toString('base64url');

  it('with documents inside that are no longer what they were', () => {
    fc.assert(
      fc.property(hostileJson(anyDocument), (text) => {
        const fragment = packed(text);
        answerOrRefusal(InputError, () => readLink(`#pattern=1.${fragment}`));
      }),
      fuzzRuns(200),
    );
  });

  it('with letters changed, doubled and dropped', () => {
    const link = anyDocument.map((text) => `#pattern=1.${packed(text)}`);
    fc.assert(
      fc.property(hostileText(link), (hash) => {
        answerOrRefusal(InputError, () => readLink(hash));
      }),
      fuzzRuns(200),
    );
  });

  it('with packed bytes spoilt', () => {
    const bytes = anyDocument.map((text) => deflate(utf8(text)));
    fc.assert(
      fc.property(bytes, fc.nat(), fc.nat(255), fc.nat(), (whole, at, value, end) => {
        const spoilt = Buffer.from(whole);
        spoilt[at % spoilt.length] = value;
        const cut = end % 3 === 0 ? spoilt.subarray(0, end % spoilt.length) : spoilt;
        answerOrRefusal(InputError, () => readLink(`#pattern=1.${cut.toString('base64url')}`));
      }),
      fuzzRuns(200),
    );
  });
});
