/** The scribe template of the 800-pocket part and its files, against planning that part. Prints; judges nothing. */
import { test } from 'vitest';
import { builtModule } from '#support/process/built-module.ts';
import type { templateWork } from './template-work.ts';

test('template of 800 nested pockets: processor time against the plan’s', async () => {
  const { templateWork: work } = await builtModule<{ templateWork: typeof templateWork }>(
    'tests/bench/template-work.ts',
  );
  for (let round = 0; round < 3; round++) {
    const planning = spent();
    const plan = work.gridPlan();
    const planned = planning();
    const making = spent();
    const { set } = work.makeTemplates(work.inputFor(plan));
    const made = making();
    if (set === undefined) throw new Error('the grid has a template');
    const writing = spent();
    const files = await work.templateFiles(set, { planHash: '0'.repeat(64), unit: 'mm', date: undefined });
    const written = writing();
    const megabytes = files.reduce((sum, { bytes }) => sum + bytes.length, 0) / 1e6;
    console.log(
      `plan ${planned.toFixed(0)} ms; template ${made.toFixed(0)} ms = ${(made / planned).toFixed(2)} of it; ` +
        `files ${written.toFixed(0)} ms = ${(written / planned).toFixed(2)} of it, ${megabytes.toFixed(1)} MB; ` +
        `${set.templates.flat().length} slots`,
    );
  }
});

/** Milliseconds of processor time, which other work on the machine does not count into. */
function spent(): () => number {
  const start = process.cpuUsage();
  return () => process.cpuUsage(start).user / 1000;
}
