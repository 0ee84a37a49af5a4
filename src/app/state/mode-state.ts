/** What the window is for just now: planning, the review of a plan, or the run at the tank. Beside the job, never in it. */
import type { FaceLook } from './faces-looked-at.ts';
import { EMPTY_DRAFT, type ReviewDraft } from './review-draft.ts';

export type Mode = 'planning' | 'review' | 'tank';

export interface ModeState {
  readonly mode: Mode;
  /** Index of the stage that is looked at. */
  readonly step: number;
  /** What was on show in this review. */
  readonly looks: readonly FaceLook[];
  readonly draft: ReviewDraft;
}

export const EMPTY_MODE: ModeState = { mode: 'planning', step: 0, looks: [], draft: EMPTY_DRAFT };
