/** The hand-off on its way: what it is made from, and what has been made of it. Types only; `prepare-handoff.ts` makes it. */
import type { Finding } from '#findings/finding.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import type { TemplateSet } from '#handoff/template/template-set.ts';
import type { Job, SheetSide } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface HandoffInput {
  readonly choices: HandoffChoices;
  readonly job: Job;
  readonly plan: EtchPlan;
  /** The front, made when first asked for. */
  readonly kit: () => ContourKit;
  /** Where the plan has both faces. */
  readonly far?: { readonly kit: () => ContourKit } | undefined;
  /** The metal that goes in all, mm³, where it was measured: of both faces it has to be. */
  readonly removed?: number | undefined;
  readonly units: { readonly job: ShownUnit; readonly drawing: LengthUnit };
}

/** What is made for those files that need it; undefined where no chosen file does, or none can be made. */
export interface Made {
  /** That there is a line to cut, and that pages have room for the pictures. */
  readonly lines: true;
  readonly pictures: true;
  readonly points: readonly InspectionPoint[];
  readonly sections: readonly NamedSection[];
  readonly templates: TemplateSet;
  readonly solid: ReliefMesh;
}

export interface PreparedHandoff extends HandoffInput {
  readonly made: { readonly [Need in keyof Made]: Made[Need] | undefined };
  /** Of a part that is etched on both faces, where the files are of one of them; `plan.far` is then the other, in the same frame. */
  readonly side?: SheetSide;
  readonly findings: readonly Finding[];
}
