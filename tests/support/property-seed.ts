/** Property tests try the same cases at each run, so that a red run can be repeated; `SEED=n` tries others. */
import fc from 'fast-check';

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env['SEED'] ?? 20261125) });
