/** `isobath plan JOB.json --out DIR`: the whole job, from the files named to the files written. */

import { resolve } from 'node:path';
import { bathText } from '#cli/bath-text.ts';
import { budgetText } from '#cli/budget-text.ts';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import type { SetChanged } from '#cli/file-set.ts';
import { keepMemoryLean } from '#cli/lean-memory.ts';
import { levelChoicesText } from '#cli/level-choices-text.ts';
import { lineBudgetText } from '#cli/line-budget-text.ts';
import { maskingsText } from '#cli/maskings-text.ts';
import { nodeSha256 } from '#cli/node-sha256.ts';
import { optimizeLate } from '#cli/optimize-late.ts';
import { otherThreads } from '#cli/other-threads.ts';
import { paint } from '#cli/paint.ts';
import { progressLine } from '#cli/progress-line.ts';
import { readText } from '#cli/read-input.ts';
import { readJobInput } from '#cli/read-job-input.ts';
import { stageTable } from '#cli/stage-table.ts';
import { surveyText } from '#cli/survey-text.ts';
import type { Terminal } from '#cli/terminal.ts';
import { alignedLines } from '#cli/text-table.ts';
import { wallStepsText } from '#cli/wall-steps-text.ts';
import { writeFiles } from '#cli/write-files.ts';
import { hasStop } from '#findings/finding.ts';
import { staleNames } from '#run/handoff-files.ts';
import type { MadeFile } from '#run/output-file.ts';
import { type RunResult, runInPieces } from '#run/run-job.ts';
import { MOST_PLAN_BYTES } from '#run/run-limits.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface PlanArguments {
  readonly job: string;
  readonly out: string;
  /** plan.json of an earlier issue. */
  readonly since?: string | undefined;
  /** To share the work among, this one too; undefined: as the machine has cores. */
  readonly threads?: number | undefined;
  /** Findings as JSON instead of the table. */
  readonly json: boolean;
}

export async function planCommand(
  { job, out, since, threads, json }: PlanArguments,
  terminal: Terminal,
): Promise<CommandEnd> {
  optimizeLate();
  const input = readJobInput(job);
  if ('refused' in input) return refused(...input.refused);
  keepMemoryLean(input.drawingBytes.length);
  const earlier =
    since === undefined ? undefined : readText(since, { path: resolve(since), most: MOST_PLAN_BYTES });
  if (earlier !== undefined && 'refused' in earlier) return refused(earlier.refused);
  const progress = progressLine(terminal);
  const others = otherThreads(threads);
  const result = await runInPieces(
    { ...input, earlierPlanText: earlier?.text },
    { progress: progress.report, threads: others, sha256: nodeSha256 },
  ).finally(() => {
    others.end();
    progress.clear();
  });
  const { planFile, files, findings } = result;
  if (planFile === undefined) return refused(...findings);

  const names = files.map(({ name }) => name);
  const outcome = writeFiles({
    folder: resolve(out),
    files,
    stale: () => staleNames(names),
    inputs: since === undefined ? input.paths : [...input.paths, resolve(since)],
  });
  if ('refused' in outcome) return refused(outcome.refused);
  if (!json) terminal.out(planText(result, planFile, { ...outcome, out, color: terminal.outColor }));
  return {
    exitCode: hasStop(findings) ? 1 : 0,
    unit: planFile.job.units ?? 'mm',
    findings: [...findings, ...outcome.findings],
    record: {
      totals: planFile.totals,
      files: names,
      replaced: outcome.replaced,
      removed: outcome.removed,
      ...(result.since === undefined ? {} : { changes: result.since.changes }),
      cautions: planFile.cautions,
    },
  };
}

interface Written extends SetChanged {
  readonly out: string;
  readonly color: boolean;
}

function planText(
  { files, since }: Pick<RunResult, 'since'> & { readonly files: readonly Omit<MadeFile, 'bytes'>[] },
  planFile: NonNullable<RunResult['planFile']>,
  { out, replaced, removed, color }: Written,
): string {
  const { units: unit = 'mm' } = planFile.job;
  return [
    stageTable(planFile, { unit, color }),
    ...levelLines(planFile),
    ...budgetText(planFile.budgets, unit),
    ...surveyText(planFile.survey, unit),
    ...lineBudgetText(planFile.lineBudgets, unit),
    ...bathText(planFile.bathSheet),
    ...maskingLines(planFile, unit),
    ...changeLines(since),
    ...alignedLines(
      files.map(({ name, what }) => [name, what]),
      ['left'],
    ),
    ...replacedLines(replaced),
    ...removedLines(removed),
    `in ${out}`,
    '',
    ...planFile.cautions.map((caution) => paint(`! ${caution}`, 'yellow', color)),
    '',
  ].join('\n');
}

function replacedLines(replaced: readonly string[]): string[] {
  return replaced.length === 0 ? [] : [`replaced from an earlier plan: ${replaced.join(', ')}`];
}

/** All in one: a large plan may leave a hundred. */
function removedLines(removed: readonly string[]): string[] {
  return removed.length === 0 ? [] : [`removed, left from an earlier plan: ${removed.join(', ')}`];
}

function levelLines({ levelChoices }: NonNullable<RunResult['planFile']>): string[] {
  const lines = levelChoicesText(levelChoices);
  return lines.length === 0 ? [] : ['What a stage fewer or more would cost:', ...lines, ''];
}

function changeLines(since: RunResult['since']): string[] {
  if (since === undefined) return [];
  const { planHash, said } = since;
  return [`Changed since plan ${planHash}:`, ...(said.length === 0 ? ['nothing'] : said), ''];
}

function maskingLines(planFile: NonNullable<RunResult['planFile']>, unit: ShownUnit): string[] {
  const lines = maskingsText(planFile, unit);
  if (lines.length === 0) return [];
  const walls = wallStepsText(planFile, unit);
  return [
    `One coat, or one coat per stage (lengths in ${unit === 'in' ? 'inches' : 'mm'}, each the greatest on the part):`,
    ...lines,
    '',
    'The wall at each step, peel-next / re-mask:',
    ...walls,
    '',
  ];
}
