/** Of a plan of both faces, what the page shows: the near one, and a note that says so. */
import { type Finding, finding, sortFindings } from '#findings/finding.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';

export function nearFaceOf(shown: ShownPlan): ShownPlan {
  const regions = shown.regions.filter(({ face }) => face !== 'far');
  if (regions.length === shown.regions.length) return shown;
  const near = new Set(regions.map(({ id }) => id));
  return {
    ...shown,
    regions,
    stages: shown.stages.map(({ far, ...stage }) => ({
      ...stage,
      regions: stage.regions.filter((id) => near.has(id)),
    })),
  };
}

/** @param plan that the findings are about; undefined where there is none */
export function tellNearFace(
  findings: readonly Finding[],
  plan: { readonly far?: unknown } | undefined,
): readonly Finding[] {
  if (plan?.far === undefined) return findings;
  return sortFindings([...findings, finding('near-face-shown', {})]);
}
