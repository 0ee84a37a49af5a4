/** `isobath compare JOB.json --scribe FILE.dxf` or `--program FILE.nc`: the part that those lines would etch, against the plan. */
import { resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { comparisonText } from '#cli/comparison-text.ts';
import { optimizeLate } from '#cli/optimize-late.ts';
import { progressLine } from '#cli/progress-line.ts';
import { readInput } from '#cli/read-input.ts';
import { readJobInput } from '#cli/read-job-input.ts';
import type { Terminal } from '#cli/terminal.ts';
import { finding, hasStop } from '#findings/finding.ts';
import { compareReturned } from '#run/compare/compare-returned.ts';
import { comparisonRecord } from '#run/compare/comparison-record.ts';
import { MOST_DRAWING_BYTES } from '#run/run-limits.ts';

export interface CompareArguments {
  readonly job: string;
  readonly scribe?: string | undefined;
  readonly program?: string | undefined;
  readonly face?: string | undefined;
  readonly json: boolean;
}

export async function compareCommand(
  { job, scribe, program, face, json }: CompareArguments,
  terminal: Terminal,
): Promise<CommandEnd> {
  const name = scribe ?? program;
  if (name === undefined || (scribe !== undefined && program !== undefined)) {
    return refused(finding('command-unclear', { detail: 'give either --scribe FILE.dxf or --program FILE' }));
  }
  if (face !== undefined && face !== 'near' && face !== 'far') {
    return refused(finding('command-unclear', { detail: '--face is near or far' }));
  }
  optimizeLate();
  const input = readJobInput(job);
  const file = readInput(name, { path: resolve(name), most: MOST_DRAWING_BYTES });
  if ('refused' in input) return refused(...input.refused);
  if ('refused' in file) return refused(file.refused);
  const progress = progressLine(terminal);
  const kind = scribe === undefined ? 'program' : 'scribe';
  const {
    comparison,
    unit = 'mm',
    findings,
  } = await compareReturned(
    input,
    { kind, name, bytes: file.bytes },
    { progress: progress.report, face },
  ).finally(progress.clear);
  if (comparison === undefined) return refused(...findings);
  if (!json) terminal.out(comparisonText(comparison, unit));
  return {
    exitCode: hasStop(findings) ? 1 : 0,
    unit,
    findings,
    record: { comparison: comparisonRecord(comparison) },
  };
}
