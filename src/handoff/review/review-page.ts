/** What every page of the review sheets is made from. */
import type { Finding } from '#findings/finding.ts';
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';
import type { SheetFonts } from '#handoff/pdf/load-fonts.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import type { PlanChange } from '#handoff/plan-changes.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface ReviewInput {
  readonly plan: EtchPlan;
  readonly planFile: PlanFile;
  /** Those of the plan file. */
  readonly planFindings: readonly Finding[];
  readonly job: Job;
  readonly planHash: string;
  readonly choices: Pick<HandoffChoices, 'paper' | 'date' | 'heading' | 'issue'>;
  readonly figures: PaperFigures;
  readonly sections: readonly NamedSection[];
  readonly points: readonly InspectionPoint[];
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
  /** The earlier plan that this one is compared with, where there is one. */
  readonly since: { readonly planHash: string; readonly changes: readonly PlanChange[] } | undefined;
  /** Those of all sheets of the hand-off. */
  readonly fonts?: SheetFonts | undefined;
}

export interface ReviewPage extends ReviewInput {
  readonly pen: Pen;
  /** mm of the page that blocks have. */
  readonly width: number;
  readonly height: number;
}
