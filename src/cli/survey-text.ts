/** The survey as lines of text for under a stage table: which fit, and what it gains. */
import type { RunResult } from '#run/run-job.ts';

type Survey = NonNullable<RunResult['planFile']>['survey'];

/** None without a survey. */
export function surveyText(survey: Survey): string[] {
  if (survey === undefined) return [];
  const { model, readings, tried, doubt, before, after } = survey;
  const misses = tried.map((each) => `${each.model} ${each.sigma.toFixed(4)}`).join(', ');
  return [
    `This very sheet: ${model} through ${readings.length} readings, off by ± ${doubt.toFixed(3)} mm where they were taken`,
    `a reading left out is missed by, mm: ${misses}`,
    ...(before === undefined || after === undefined
      ? []
      : [
          `taken as one thickness with a spread: ${shareText(before)}`,
          `with this very sheet:                 ${shareText(after)}`,
        ]),
    '',
  ];
}

function shareText({ levels, byClock, gauged }: NonNullable<NonNullable<Survey>['before']>): string {
  const named = levels.map((level) => level.toFixed(3)).join(', ');
  return `levels ${named}; up to ${percent(byClock)} of a tolerance by the clock, ${percent(gauged)} gauged`;
}

function percent(share: number | null): string {
  return share === null ? 'all' : `${Math.round(share * 100)} %`;
}
