/** `isobath rework PLAN.json`: after the run, or once the factor is known better: extra dips, edges, leaks, scratches. Writes nothing. */
import { resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { readText } from '#cli/read-input.ts';
import { readNumber } from '#cli/read-number.ts';
import { damageText, forecastText, reworkText } from '#cli/rework-text.ts';
import type { Terminal } from '#cli/terminal.ts';
import { type Finding, finding, hasStop } from '#findings/finding.ts';
import { forecastAtFactor, type TimedForecast } from '#run/rework/edges-at-factor.ts';
import { type Leak, leakOf, scratchHalfWidth } from '#run/rework/maskant-damage.ts';
import { readReworkPlan } from '#run/rework/rework-plan.ts';
import { type Rework, reworkRun } from '#run/rework/rework-run.ts';
import { MOST_PLAN_BYTES } from '#run/run-limits.ts';

export interface ReworkArguments {
  readonly plan: string;
  readonly readings?: string | undefined;
  readonly factor?: string | undefined;
  readonly leak?: string | undefined;
  readonly scratch?: string | undefined;
  readonly json: boolean;
}

export interface Reported {
  readonly rework?: Rework;
  readonly forecast?: TimedForecast;
  readonly leak?: Leak;
  readonly scratches?: readonly { readonly level: number; readonly halfWidth: number }[];
}

export function reworkCommand(asked: ReworkArguments, terminal: Terminal): CommandEnd {
  const { plan, readings, json } = asked;
  const figures = figuresOf(asked);
  if ('refused' in figures) return refused(...figures.refused);
  const { factor, leak: radius, scratch } = figures;
  if ([readings, factor, radius, scratch].every((each) => each === undefined)) {
    return refused(finding('command-unclear', { detail: 'give --readings, --factor, --leak or --scratch' }));
  }
  const planText = readText(plan, { path: resolve(plan), most: MOST_PLAN_BYTES });
  if ('refused' in planText) return refused(planText.refused);
  const read = readReworkPlan(planText.text);
  if ('refused' in read) return refused(read.refused);
  const { process, lines, planFile } = read;
  const unit = planFile.job.units ?? 'mm';
  const reworked = readings === undefined ? { findings: [] } : reworkFrom(planText.text, readings);
  if (readings !== undefined && !('rework' in reworked)) return { ...refused(...reworked.findings), unit };
  const reported: Reported = {
    ...('rework' in reworked && reworked.rework !== undefined ? { rework: reworked.rework } : {}),
    ...(factor === undefined ? {} : { forecast: forecastAtFactor(read, factor) }),
    ...(radius === undefined ? {} : { leak: leakOf(process, { radius, minutesLeft: 0 }) }),
    ...(scratch === undefined
      ? {}
      : {
          scratches: lines.levels.map((depth) => ({
            level: depth,
            halfWidth: scratchHalfWidth(process, { scratch, depth }),
          })),
        }),
  };
  if (!json) {
    if (reported.rework !== undefined) terminal.out(reworkText(reported.rework, unit));
    if (reported.forecast !== undefined) terminal.out(forecastText(reported.forecast, { ...planFile, unit }));
    terminal.out(damageText(reported, unit));
  }
  const { findings } = reworked;
  return { exitCode: hasStop(findings) ? 1 : 0, findings, record: { ...reported }, unit };
}

function reworkFrom(planText: string, readings: string): ReturnType<typeof reworkRun> {
  const read = readText(readings, { path: resolve(readings), most: 10_000_000 });
  return 'refused' in read ? { findings: [read.refused] } : reworkRun(planText, read.text);
}

type Named = 'factor' | 'leak' | 'scratch';

/** Above 0; lengths in mm. */
function figuresOf(
  asked: Pick<ReworkArguments, Named>,
): Partial<Record<Named, number>> | { readonly refused: readonly Finding[] } {
  const names: readonly Named[] = ['factor', 'leak', 'scratch'];
  const figures: Partial<Record<Named, number>> = {};
  const wrong: Finding[] = [];
  for (const name of names) {
    const text = asked[name];
    if (text === undefined) continue;
    const value = readNumber(text);
    if (value !== undefined && value > 0) figures[name] = value;
    else
      wrong.push(
        finding('option-value-wrong', { option: `--${name}`, found: text, expected: 'a figure above 0' }),
      );
  }
  return wrong.length > 0 ? { refused: wrong } : figures;
}
