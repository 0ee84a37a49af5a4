/**
 * Property tests try the same cases at each run, so that a red run can be repeated; `SEED=n` tries others, in all of them:
 * none has a seed of its own. Looking for a smaller failing case ends after a while: with lines at any place there is
 * always a smaller one. That is ten times what the longest of them takes, so that a busy machine ends none.
 */
import fc from 'fast-check';
import { PROPERTY_SEED } from './seed-of-run.ts';

fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  seed: PROPERTY_SEED,
  interruptAfterTimeLimit: 180_000,
  markInterruptAsFailure: true,
});
