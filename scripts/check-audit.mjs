// npm run check:audit: asks the registry for weaknesses known of what is used. Needs the network, so
// it is no part of npm test. Exit codes: 0 none known, 1 some known, 3 the registry gave no answer.
import './lib/require-node.mjs';
import { audit, NO_ANSWER } from './lib/audit.mjs';
import { checkDependencies } from './lib/dependencies.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';

await runMain(async () => {
  await ensureInstalled();
  const faults = checkDependencies();
  const parts = [
    ['what is shipped', audit({ shippedOnly: true })],
    ['everything, tools too', audit({ shippedOnly: false })],
  ];
  for (const [of, { known = [], silent }] of parts) {
    if (silent !== undefined) say(`${of}: NOT AUDITED, the registry gave no answer: ${silent}.`);
    else say(`${of}: ${known.length === 0 ? 'no weakness is known' : `${known.length} known`}.`);
    for (const { name, versions, severity, title } of known) {
      say(`  ${severity}: ${name} ${versions}: ${title}`);
    }
  }
  for (const fault of faults) say(`  ${fault}`);
  if (faults.length > 0 || parts.some(([, { known = [] }]) => known.length > 0)) {
    throw new Refusal('Something must be done about dependencies.');
  }
  if (parts.some(([, { silent }]) => silent !== undefined)) {
    throw new Refusal(
      'This is no all-clear. Ask again on a machine whose registry answers audits.',
      NO_ANSWER,
    );
  }
});
