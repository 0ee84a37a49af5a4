/** A review on its way: what was ticked and remarked, and the plan that it is about. Pure: (draft, arguments) → draft. */
import type { Remark } from '#job/formats/review-file.ts';

export interface ReviewDraft {
  readonly reviewer: string;
  /** Stage numbers. */
  readonly checked: readonly number[];
  readonly remarks: readonly Remark[];
  /** Text of plan.json as it was when the first mark was made; undefined before. */
  readonly planText: string | undefined;
}

export const EMPTY_DRAFT: ReviewDraft = { reviewer: '', checked: [], remarks: [], planText: undefined };

/** Whether the marks were made on another plan than this one. */
export function isOfOtherPlan(draft: ReviewDraft, planText: string | undefined): boolean {
  return draft.planText !== undefined && planText !== undefined && draft.planText !== planText;
}

/** Ticks a stage, or takes the tick back. A draft of another plan stays as it is: its ticks may not be mixed with new ones. */
export function toggleCheck(draft: ReviewDraft, stage: number, planText: string): ReviewDraft {
  if (isOfOtherPlan(draft, planText)) return draft;
  const checked = draft.checked.includes(stage)
    ? draft.checked.filter((each) => each !== stage)
    : [...draft.checked, stage];
  return { ...draft, checked, planText };
}

export function addRemark(draft: ReviewDraft, remark: Remark, planText: string): ReviewDraft {
  if (isOfOtherPlan(draft, planText)) return draft;
  return { ...draft, remarks: [...draft.remarks, remark], planText };
}

export function removeRemark(draft: ReviewDraft, index: number): ReviewDraft {
  return { ...draft, remarks: draft.remarks.toSpliced(index, 1) };
}

/** The same reviewer on another plan: no stage of it is ticked yet; remarks stay until they are taken away. */
export function startOver(draft: ReviewDraft, planText: string): ReviewDraft {
  return { ...draft, checked: [], planText };
}
