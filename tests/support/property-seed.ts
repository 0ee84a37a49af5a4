/**
 * Property tests try the same cases at each run, so that a red run can be repeated; `SEED=n` tries others. Looking for a
 * smaller failing case ends after a while: with lines at any place there is always a smaller one.
 */
import fc from 'fast-check';

fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  seed: Number(process.env['SEED'] ?? 20261125),
  interruptAfterTimeLimit: 45_000,
  markInterruptAsFailure: true,
});
