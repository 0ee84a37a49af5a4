/** A survey as it stands in plan.json; lengths in mm, places in the drawing's frame. */

import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { surveyDoubtAt, surveyedAt } from '#job/sheet-survey.ts';
import type { SurveyedSheet } from '#job/surveyed-sheet.ts';
import type { Region } from '#part/part.ts';
import { roundFigures } from '#units/round-figures.ts';
import type { SurveyGain } from './survey-gain.ts';

export function surveyRecord(
  { survey, doubt }: SurveyedSheet,
  {
    regions,
    gain,
    origin,
  }: { readonly regions: readonly Region[]; readonly gain: SurveyGain | undefined; readonly origin: Point },
): NonNullable<PlanFile['survey']> {
  const { model, about, scale, terms, sigma, readings, tried } = survey;
  const moved = movePoint(about, origin);
  return roundFigures<NonNullable<PlanFile['survey']>>({
    model,
    about: [moved.x, moved.y],
    scale,
    terms,
    sigma,
    doubt,
    tried: tried.map((each) => ({ model: each.model, sigma: each.sigma })),
    readings: readings.map(({ at, thickness }) => {
      const place = movePoint(at, origin);
      return { at: [place.x, place.y], thickness, off: thickness - surveyedAt(survey, at) };
    }),
    regions: regions.map(({ id, label }) => ({
      id,
      thickness: surveyedAt(survey, label),
      doubt: surveyDoubtAt(survey, label),
    })),
    ...gain,
  });
}
