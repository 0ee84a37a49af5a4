/** `isobath correct PLAN.json --readings FILE.csv`: rate had and minutes left; the record of the run grows beside the plan. */
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { correctionText } from '#cli/correction-text.ts';
import { paint } from '#cli/paint.ts';
import { readText, type TextRead } from '#cli/read-input.ts';
import { readingsText } from '#cli/readings-text.ts';
import type { Terminal } from '#cli/terminal.ts';
import { writeText } from '#cli/write-files.ts';
import { hasStop } from '#findings/finding.ts';
import { correctRun } from '#run/correct-run.ts';
import { MOST_PLAN_BYTES } from '#run/run-limits.ts';

export interface CorrectArguments {
  readonly plan: string;
  readonly readings: string;
  readonly json: boolean;
}

const MOST_READINGS_BYTES = 10_000_000;

export function correctCommand({ plan, readings, json }: CorrectArguments, terminal: Terminal): CommandEnd {
  const planPath = resolve(plan);
  const recordPath = join(dirname(planPath), `${basename(planPath).replace(/\.json$/i, '')}.run.json`);
  const planRead = readText(plan, { path: planPath, most: MOST_PLAN_BYTES });
  if ('refused' in planRead) return refused(planRead.refused);
  const readingsRead = readText(readings, { path: resolve(readings), most: MOST_READINGS_BYTES });
  if ('refused' in readingsRead) return refused(readingsRead.refused);
  const recordRead: TextRead | { readonly text: undefined } = existsSync(recordPath)
    ? readText(basename(recordPath), { path: recordPath, most: MOST_PLAN_BYTES })
    : { text: undefined };
  if ('refused' in recordRead) return refused(recordRead.refused);

  const result = correctRun({
    planText: planRead.text,
    readingsText: readingsRead.text,
    recordText: recordRead.text,
  });
  const { corrected, readings: listed = [], unit = 'mm', findings, recordText } = result;
  if (corrected === undefined || recordText === undefined) return { ...refused(...findings), unit };
  const outcome = writeText(recordPath, recordText, [planPath, resolve(readings)]);
  if ('refused' in outcome) return refused(outcome.refused);
  if (!json) {
    const look = { unit, color: terminal.outColor };
    terminal.out(`${readingsText(listed, look)}\n${correctionText(corrected, look)}`);
    const caution =
      'Minutes are calculated, not approved: the site’s process specification decides. Wear the protective equipment that the bath requires when gauging.';
    terminal.out(`record: ${recordPath}\n${paint(`! ${caution}`, 'yellow', terminal.outColor)}\n`);
  }
  const { off: _, noise, ...rest } = corrected;
  return {
    exitCode: hasStop(findings) ? 1 : 0,
    findings: [...findings, ...outcome.findings],
    unit,
    record: { ...rest, readings: listed, readingNoise: noise, runRecord: recordPath },
  };
}
