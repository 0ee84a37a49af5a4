/**
 * A review written down and read back. It names its plan by the SHA-256 of plan.json and holds it whole; the two must agree.
 * A hash shows that a plan was altered; it is no signature.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { jsonText } from '#handoff/json-text.ts';
import { linesGone } from '#handoff/line-changes.ts';
import { planChanges, stagePairs } from '#handoff/plan-changes.ts';
import { sayPlanChanges } from '#handoff/say-plan-change.ts';
import type { Contour, PlanFile } from '#job/formats/plan-file.ts';
import { readFormat } from '#job/formats/read-format.ts';
import { readPlanFile } from '#job/formats/read-plan-file.ts';
import { REVIEW_FORMAT, type Remark, type ReviewFile } from '#job/formats/review-file.ts';
import { sha256Of } from './sha256-of.ts';

export interface Review {
  readonly reviewer: string;
  /** Year-month-day. */
  readonly date: string;
  /** Stage numbers. */
  readonly checked: readonly number[];
  readonly remarks: readonly Remark[];
  /** Text of plan.json, as it was looked at. */
  readonly planText: string;
}

export function reviewText({ planText, reviewer, date, checked, remarks }: Review): string {
  return jsonText({
    format: 'isobath-review',
    version: 1,
    reviewer,
    date,
    checked: [...checked].sort((a, b) => a - b),
    remarks,
    plan: { sha256: sha256Of(planText), file: JSON.parse(planText) },
  });
}

/** Findings: those of any file of a format (`job-…`), `review-plan-altered`. `file` is its name. */
export function readReview(
  text: string,
  file: string,
): { readonly review?: Review; readonly findings: readonly Finding[] } {
  const { value, findings } = readFormat(text, REVIEW_FORMAT, file);
  if (value === undefined) return { findings };
  const { plan, reviewer, date, checked, remarks } = value;
  // As it stands in the file: the schema's own copy has its keys in another order.
  const planText = jsonText((JSON.parse(text) as ReviewFile).plan.file);
  if (sha256Of(planText) !== plan.sha256) {
    return { findings: [finding('review-plan-altered', { sha256: plan.sha256 }, { file })] };
  }
  return { review: { reviewer, date, checked, remarks, planText }, findings };
}

/** By stage of the present plan, the lines that it had in the reviewed one and has no more, in the frame of the drawing. */
export function linesBefore(reviewed: string, now: string): ReadonlyMap<number, readonly Contour[]> {
  const plans = readBoth(reviewed, now);
  if ('refused' in plans) return new Map();
  return new Map(
    stagePairs(plans.before.stages, plans.now.stages).map(([earlier, stage]) => [
      stage.number,
      linesGone(earlier.lines, stage.lines),
    ]),
  );
}

export interface SinceReview {
  /** What is another in the plan than when it was looked at, a sentence each; empty when it is the very same. */
  readonly said: readonly string[];
  /** `plan-file-unusable`, where one of the two can't be compared. */
  readonly findings: readonly Finding[];
}

/** In the job's unit. @param field how a field of the job is named, by its path */
export function changesSince(reviewed: string, now: string, field = (path: string) => path): SinceReview {
  if (reviewed === now) return { said: [], findings: [] };
  const plans = readBoth(reviewed, now);
  if ('refused' in plans) return { said: [], findings: [plans.refused] };
  const said = sayPlanChanges(planChanges(plans.before, plans.now), {
    field,
    unit: plans.now.job.units ?? 'mm',
  });
  const nothing = 'The plan file is another, but for nothing that is listed here.';
  return { said: said.length > 0 ? said : [nothing], findings: [] };
}

function readBoth(
  reviewed: string,
  present: string,
): { readonly before: PlanFile; readonly now: PlanFile } | { readonly refused: Finding } {
  const before = readPlanFile(reviewed);
  if ('refused' in before) return before;
  const now = readPlanFile(present);
  return 'refused' in now ? now : { before: before.planFile, now: now.planFile };
}
