/** `isobath plan JOB.json --out DIR`: the whole job, from the files named to the files written. */
import { resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { levelChoicesText } from '#cli/level-choices-text.ts';
import { paint } from '#cli/paint.ts';
import { progressLine } from '#cli/progress-line.ts';
import { readJobInput } from '#cli/read-job-input.ts';
import { stageTable } from '#cli/stage-table.ts';
import type { Terminal } from '#cli/terminal.ts';
import { writeFiles } from '#cli/write-files.ts';
import { hasStop } from '#findings/finding.ts';
import { CUT_FILES } from '#run/cut-files.ts';
import { type RunResult, runJob } from '#run/run-job.ts';

export interface PlanArguments {
  readonly job: string;
  readonly out: string;
  /** Findings as JSON instead of the table. */
  readonly json: boolean;
}

export async function planCommand(
  { job, out, json }: PlanArguments,
  terminal: Terminal,
): Promise<CommandEnd> {
  const input = readJobInput(job);
  if ('refused' in input) return refused(...input.refused);
  const progress = progressLine(terminal);
  const result = await runJob(input, { progress: progress.report }).finally(progress.clear);
  const { planFile, files, findings } = result;
  if (planFile === undefined) return refused(...findings);

  const names = files.map(({ name }) => name);
  const outcome = writeFiles({
    folder: resolve(out),
    files,
    stale: CUT_FILES.filter((name) => !names.includes(name)),
    inputs: input.paths,
  });
  if ('refused' in outcome) return refused(outcome.refused);
  if (!json)
    terminal.out(planText(planFile, { out, files, removed: outcome.removed, color: terminal.outColor }));
  return {
    exitCode: hasStop(findings) ? 1 : 0,
    findings,
    record: { totals: planFile.totals, files: names, removed: outcome.removed, cautions: planFile.cautions },
  };
}

interface Written {
  readonly out: string;
  readonly files: RunResult['files'];
  /** Files of an earlier run that were taken away. */
  readonly removed: readonly string[];
  readonly color: boolean;
}

function planText(
  planFile: NonNullable<RunResult['planFile']>,
  { out, files, removed, color }: Written,
): string {
  const width = Math.max(...files.map(({ name }) => name.length));
  return [
    stageTable(planFile, color),
    ...levelLines(planFile),
    ...files.map(({ name, what }) => `${name.padEnd(width)}  ${what}`),
    ...removed.map(
      (name) => `${name.padEnd(width)}  of an earlier plan: taken away, for it does not belong to this one`,
    ),
    `in ${out}`,
    '',
    ...planFile.cautions.map((caution) => paint(`! ${caution}`, 'yellow', color)),
    '',
  ].join('\n');
}

function levelLines({ levelChoices }: NonNullable<RunResult['planFile']>): string[] {
  const lines = levelChoicesText(levelChoices);
  return lines.length === 0 ? [] : ['What a stage fewer or more would cost:', ...lines, ''];
}
