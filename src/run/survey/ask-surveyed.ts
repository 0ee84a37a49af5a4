/**
 * What a surveyed sheet asks of floors that have a final thickness (M8.2): depths that serve all of a region where the sheet bends, and
 * how much of each tolerance levels leave to the run, so that what is chosen can be held. All else stays as asked.
 */
import { roomForRun } from '#checks/tolerance-budget.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { surveyDoubtAt } from '#job/sheet-survey.ts';
import { bendAt, type SurveyedSheet } from '#job/surveyed-sheet.ts';
import { deeperBy } from '#part/deeper-by.ts';
import type { Asked, Region } from '#part/part.ts';
import type { PlanFace } from '#plan/make-plan.ts';

export interface SurveyedAsk {
  readonly face: PlanFace;
  readonly findings: readonly Finding[];
}

/** Findings: `survey-bends-too-much`, `survey-does-not-reach`. */
export function askSurveyed(
  face: PlanFace,
  { stock, process, levels, sizing }: Pick<Job, 'stock' | 'process' | 'levels' | 'sizing'>,
): SurveyedAsk {
  const { surveyed } = stock;
  const { part, asked } = face;
  if (surveyed === undefined) return { face, findings: [] };
  const findings: Finding[] = [];
  const own = new Map(asked);
  for (const region of part.regions) {
    const each = asked.get(region.id);
    if (each === undefined || each.depth <= 0) continue;
    const room = (doubt: number) => roomForRun(each.depth, process, doubt);
    const reserveOf = (doubt: number) => (typeof levels === 'string' ? { reserve: room(doubt) } : {});
    // A depth does not feel the sheet, but its level is chosen beside those that do.
    if (each.asThickness !== true) {
      own.set(region.id, { ...each, ...reserveOf(0) });
      continue;
    }
    const places = placesOf(region);
    const doubt = Math.max(...places.map((at) => surveyDoubtAt(surveyed.survey, at)));
    const place = { at: region.label, regions: [region.id] };
    if (doubt > FARTHER * surveyed.doubt) {
      findings.push(finding('survey-does-not-reach', { doubt, among: surveyed.doubt }, place));
    }
    const bent = bentAsk(each, bendOver(surveyed, places));
    if (bent.lost > 0)
      findings.push(
        finding('survey-bends-too-much', { bend: bent.lost, tolerance: each.plus + each.minus }, place),
      );
    own.set(region.id, { ...bent.asked, ...reserveOf(surveyed.doubt + (sizing?.doubt ?? 0)) });
  }
  return { face: { part, asked: own }, findings };
}

/** So many times the doubt among the readings: a region beyond them. */
const FARTHER = 2;
/** Places tried along each span of a border: bends are of second order, and missed by a hundredth of what they are. */
const TRIED = 9;

function placesOf({ loops, label }: Region): Point[] {
  return [
    label,
    ...loops
      .flat()
      .flatMap((span) => Array.from({ length: TRIED }, (_, i) => pointAlong(span, i / (TRIED - 1)))),
  ];
}

/** Least and greatest that the sheet is thicker than its even part. */
function bendOver(
  surveyed: SurveyedSheet,
  places: readonly Point[],
): { readonly low: number; readonly high: number } {
  const bends = places.map((at) => bendAt(surveyed, at));
  return { low: Math.min(...bends), high: Math.max(...bends) };
}

/** Least share of a tolerance that is left to levels. */
const LEAST_LEFT = 0.2;

/**
 * A floor of thickness T accepts depths from t − T − minus to t − T + plus at each place; all of them together from the greatest of the one to
 * the least of the other. Both sides of the tolerance shrink alike.
 */
function bentAsk(
  asked: Asked,
  { low, high }: { readonly low: number; readonly high: number },
): { readonly asked: Asked; readonly lost: number } {
  const whole = asked.plus + asked.minus;
  if (high === low) return { asked: low === 0 ? asked : deeperBy(asked, low), lost: 0 };
  const left = whole - (high - low);
  const share = whole === 0 ? 0 : Math.max(LEAST_LEFT, left / whole);
  const [plus, minus] = [asked.plus * share, asked.minus * share];
  const shift = left > 0 ? high - asked.minus + minus : (low + high) / 2;
  return { asked: { ...deeperBy(asked, shift), plus, minus }, lost: left > 0 ? 0 : high - low };
}
