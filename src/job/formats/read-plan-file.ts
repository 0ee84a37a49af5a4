/** Reads the text of plan.json. The file is Isobath's own, but it comes from a disk: it is held to its schema, and the first fault is named. */
import * as z from 'zod/mini';
import { type Finding, finding } from '#findings/finding.ts';
import { expectedBy } from './explain-issues.ts';
import { type PlanFile, planFileSchema } from './plan-file.ts';
import { type JsonPath, spellPath } from './read-json.ts';

export type PlanReading = { readonly planFile: PlanFile } | { readonly refused: Finding };

/** Findings: `plan-file-unusable`. */
export function readPlanFile(text: string): PlanReading {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return unusablePlan('', 'JSON');
  }
  const { data, error } = z.safeParse(planFileSchema, file);
  if (data !== undefined) return { planFile: data };
  const issue = error.issues[0];
  return issue === undefined
    ? unusablePlan('', 'a plan')
    : unusablePlan(spellPath(issue.path as JsonPath), expectedBy(issue));
}

export function unusablePlan(path: string, expected: string): { readonly refused: Finding } {
  return { refused: finding('plan-file-unusable', { path, expected }) };
}
