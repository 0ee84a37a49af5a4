/** The survey as lines of text for under a stage table: which fit, and what it gains. */
import type { RunResult } from '#run/run-job.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

type Survey = NonNullable<RunResult['planFile']>['survey'];

/** None without a survey. */
export function surveyText(survey: Survey, unit: ShownUnit): string[] {
  if (survey === undefined) return [];
  const { model, readings, tried, doubt, before, after } = survey;
  const misses = tried.map((each) => `${each.model} ${gaugedFigure(each.sigma, unit)}`).join(', ');
  return [
    `Survey of the sheet: ${model} through ${readings.length} readings, off by ± ${gaugedFigure(doubt, unit)} ${unit} where they were taken`,
    `a reading left out is missed by, ${unit}: ${misses}`,
    ...(before === undefined || after === undefined
      ? []
      : [
          `taken as one thickness with a spread: ${shareText(before, unit)}`,
          `with the survey of the sheet:         ${shareText(after, unit)}`,
        ]),
    '',
  ];
}

function shareText(
  { levels, byClock, gauged }: NonNullable<NonNullable<Survey>['before']>,
  unit: ShownUnit,
): string {
  const named = levels.map((level) => gaugedFigure(level, unit)).join(', ');
  return `levels ${named}; up to ${percent(byClock)} of a tolerance by the clock, ${percent(gauged)} gauged`;
}

function percent(share: number | null): string {
  return share === null ? 'all' : `${Math.round(share * 100)} %`;
}
