/**
 * An earlier plan.json to compare with. The file is Isobath's own, but it comes from a disk: what the comparison reads of it is
 * checked, and reported with its path where it is not as it should be. Other keys may be those of an older or newer Isobath.
 */

import type { Finding } from '#findings/finding.ts';
import { type PlanChange, planChanges } from '#handoff/plan-changes.ts';
import { sayPlanChanges } from '#handoff/say-plan-change.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { readPlanFile } from '#job/formats/read-plan-file.ts';
import { sha256Of } from './sha256-of.ts';

export interface EarlierPlan {
  /** SHA-256 of the file. */
  readonly planHash: string;
  readonly planFile: PlanFile;
}

/** The plan compared with, and what has changed since. */
export interface PlanSince {
  readonly planHash: string;
  readonly changes: readonly PlanChange[];
  /** The same in words. */
  readonly said: readonly string[];
}

export function planSince({ planHash, planFile }: EarlierPlan, now: PlanFile): PlanSince {
  const changes = planChanges(planFile, now);
  return { planHash, changes, said: sayPlanChanges(changes, { unit: now.job.units ?? 'mm' }) };
}

/** Findings: `plan-file-unusable`. */
export function readEarlierPlan(text: string): EarlierPlan | { readonly refused: Finding } {
  const read = readPlanFile(text);
  return 'refused' in read ? read : { ...read, planHash: sha256Of(text) };
}
