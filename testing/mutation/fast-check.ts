// Takes fast-check's place while mutants are tried (see vitest.config.ts beside it): always the same
// cases, so that a mutant which survives does so again, and a share of them only, because they are
// asked of every mutant. `MUTATION_SHARE=1` asks all.
import fc, {
  type IAsyncProperty,
  type IProperty,
  type Parameters,
} from '../../node_modules/fast-check/lib/fast-check.js';

export * from '../../node_modules/fast-check/lib/fast-check.js';

const SEED = 20_261_125;
const SHARE = Number(process.env['MUTATION_SHARE'] ?? 0.05);
const FEWEST = 10;
/** What fast-check runs when a property does not say. */
const DEFAULT_RUNS = 100;

fc.configureGlobal({ seed: SEED });

function assertFewer<Ts>(
  property: IAsyncProperty<Ts> | IProperty<Ts>,
  parameters: Parameters<Ts> = {},
): Promise<void> | void {
  const numRuns = Math.max(FEWEST, Math.ceil((parameters.numRuns ?? DEFAULT_RUNS) * SHARE));
  // A failure is all that counts, so no time is spent on finding a shorter one.
  return fc.assert(property as IProperty<Ts>, { ...parameters, numRuns, endOnFailure: true });
}

export default { ...fc, assert: assertFewer };
