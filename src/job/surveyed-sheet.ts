/**
 * A surveyed sheet as the rest of the plan takes it (M8.1, M8.2): flat, or even from one end of the readings to the other, with what it may be
 * off; what a quadratic bends beside its plane is taken off tolerances region by region. A tenth of their extent beyond the readings the thickness is held.
 */

import { dot, type Point, scale } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';
import { EVEN_SHEET } from '#units/depth-tolerances.ts';
import { toMillionth } from '#units/round-figures.ts';
import { doubtAmong, type SheetSurvey, type SurveyFit, surveyedAt } from './sheet-survey.ts';
import type { Taper } from './taper.ts';

export interface SurveyedSheet {
  readonly survey: SheetSurvey;
  /** The flat or even part of it. */
  readonly thickness: number | Taper;
  readonly even: SurveyFit;
  /** ±, where readings were taken. */
  readonly doubt: number;
  /** How much thinner than `thickness` the fit comes anywhere among the readings. */
  readonly bow: number;
}

/** Share of the readings' extent by which a slope goes on at either end: gauges keep off the edge of a sheet. Our own choice. */
const BEYOND = 0.1;

export function surveyedSheet(survey: SheetSurvey): SurveyedSheet {
  const { readings, tried } = survey;
  // A quadratic's own best plane: the plane of the same readings.
  const even =
    survey.model === 'quadratic' ? (tried.find(({ model }) => model === 'plane') ?? survey) : survey;
  const thickness = thicknessOf(
    even,
    readings.map(({ at }) => at),
  );
  const bends = readings.map(({ at }) => bendAt({ survey, even }, at));
  return {
    survey,
    thickness,
    even,
    doubt: toMillionth(doubtAmong(survey, readings)),
    bow: toMillionth(Math.max(0, -Math.min(...bends))),
  };
}

/** How much thicker the fit is at a place than its even part. */
export function bendAt({ survey, even }: Pick<SurveyedSheet, 'survey' | 'even'>, at: Point): number {
  return survey === even ? 0 : surveyedAt(survey, at) - surveyedAt(even, at);
}

function thicknessOf(even: SurveyFit, places: readonly Point[]): number | Taper {
  const { model, about, terms, scale: unit } = even;
  const middle = surveyedAt(even, about);
  const slope = { x: (terms[1] ?? 0) / unit, y: (terms[2] ?? 0) / unit };
  const steepness = hypot(slope.x, slope.y);
  if (model === 'constant' || steepness === 0) return toMillionth(middle);
  const way = scale(slope, 1 / steepness);
  const along = places.map(({ x, y }) => dot({ x: x - about.x, y: y - about.y }, way));
  const [least, most] = [Math.min(...along), Math.max(...along)];
  const beyond = (most - least) * BEYOND;
  const [from, to] = [least - beyond, most + beyond];
  if ((to - from) * steepness < EVEN_SHEET) return toMillionth(middle);
  const place = (distance: number): Point => ({
    x: about.x + way.x * distance,
    y: about.y + way.y * distance,
  });
  return {
    from: place(from),
    to: place(to),
    fromValue: toMillionth(middle + steepness * from),
    toValue: toMillionth(middle + steepness * to),
  };
}
