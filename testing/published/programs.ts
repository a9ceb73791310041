/** Texts of programs that import every entry of the installed packages. */
import type { Entry } from './fresh-project.js';

/** Imports all of every entry and keeps it as `globalThis.everything`, by specifier. */
export function importingAll(entries: readonly Entry[]): string {
  const imports = entries.map(({ specifier }, i) => `import * as all${i} from '${specifier}';`);
  const kept = entries.map(({ specifier }, i) => `  '${specifier}': all${i},`);
  return [...imports, 'globalThis.everything = {', ...kept, '};', ''].join('\n');
}

/** Hands on every export of an entry by its name; those that are types, as types. */
export function handingOn({ specifier, types, values }: Entry): string {
  const lines = [
    types.length > 0 ? `export type { ${types.join(', ')} } from '${specifier}';` : '',
    values.length > 0 ? `export { ${values.join(', ')} } from '${specifier}';` : '',
  ];
  return `${lines.join('\n')}\n`;
}

/** Of each kind of entry something is used, so that what a name means is checked too. */
export const TYPED_USE = `
import { type Plan, planAlpha, readTextChart, verifyPlan } from '@halfhitch/core';
import chartSchema from '@halfhitch/core/schema/chart-1.schema.json' with { type: 'json' };
import { knotPose } from '@halfhitch/geometry/knot';

const { chart } = readTextChart('b #1f6fb2 lake blue\\n\\nbb');
export const plan: Plan = planAlpha(chart);
export const kinds: readonly string[] = verifyPlan(plan, chart).findings.map(({ code }) => code);
export const title: string = chartSchema.title;
knotPose('forward', 0.5);
// @ts-expect-error there is no such knot
knotPose('sideways', 0.5);
// @ts-expect-error values are not changed
plan.strings = plan.strings;
`;

export const TYPED_PAGE = `
import '@halfhitch/simulator';

const knot = document.createElement('halfhitch-knot');
knot.kind = 'backward';
knot.seek(1);
// @ts-expect-error there is no such knot
knot.kind = 'sideways';
`;

/** A program for Node that writes the names of every entry, and something of its work, to `found.json`. */
export function nodeProgram(entries: readonly Entry[]): string {
  return `${importingAll(entries)}
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
const all = globalThis.everything;
const { planAlpha, readTextChart, verifyPlan } = all['@halfhitch/core'];
const { chart } = readTextChart('b #1f6fb2 lake blue\\no #e8742c buoy orange\\n\\nbob\\nobo');
const plan = planAlpha(chart);
const { lessonList, lessonNamed } = all['@halfhitch/simulator/lessons'];
const read = (specifier) => JSON.parse(readFileSync(fileURLToPath(import.meta.resolve(specifier)), 'utf8'));
writeFileSync('found.json', JSON.stringify({
  names: Object.fromEntries(Object.entries(all).map(([name, one]) => [name, Object.keys(one).sort()])),
  wrong: verifyPlan(plan, chart).findings.filter(({ grade }) => grade === 'wrong').length,
  picture: all['@halfhitch/simulator/picture'].knotPicture().slice(0, 4),
  lessons: [lessonNamed('turn', { lang: 'de' }).pages.length, lessonList().length],
  schema: read('@halfhitch/core/schema/plan-1.schema.json').$schema,
  manifest: read('@halfhitch/simulator/custom-elements.json').modules.length,
}));
`;
}

/** Does some work with every entry and gives what came of it; as text, since it is run in a page. */
export const USING_ALL = `
globalThis.useAll = async () => {
  const all = globalThis.everything;
  const core = all['@halfhitch/core'];
  const { chart } = core.readTextChart('b #1f6fb2 lake blue\\no #e8742c buoy orange\\n\\nbobo\\nobob');
  const plan = core.planAlpha(chart);
  const colours = [...chart.colours];
  const pattern = core.diamonds({ strings: 6, colours });
  const { picture } = core.simulateDiagonal(pattern);
  const { status } = await all['@halfhitch/core/solve'].solveDiagonal(picture, { seconds: 60 });
  const from = (name) => all['@halfhitch/geometry' + name];
  const finished = from('/knot').knotPose('forward', 1);
  return {
    wrong: core.verifyPlan(plan, chart).findings.filter(({ grade }) => grade === 'wrong').length,
    solved: status,
    longer: from('').lengthOf(finished.tying) > from('').lengthOf(finished.held),
    row: from('/row').ROW_LIMITS.columns,
    plan: from('/plan').planPose(plan, 5, 0.5).strands.length > 4,
    fabric: new (from('/fabric').Fabric)(plan).chunks,
    diagonal: from('/diagonal').diagonalUsage(pattern).length,
    thread: from('/thread').threadOf().diameter > 0.1,
    picture: all['@halfhitch/simulator/picture'].knotPicture({ kind: 'backward' }).slice(0, 4),
    lesson: all['@halfhitch/simulator/lessons'].lessonNamed('turn').pages.length,
    elements: ['knot', 'lesson', 'picture', 'piece', 'row'].every(
      (name) => customElements.get('halfhitch-' + name) !== undefined),
  };
};
`;
