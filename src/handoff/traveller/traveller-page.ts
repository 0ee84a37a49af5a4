/** What every page of the traveller is made from. */
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';
import type { SheetFonts } from '#handoff/pdf/load-fonts.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import type { Job, SheetSide } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { GaugePoint } from './gauge-points.ts';

export interface TravellerInput {
  readonly plan: EtchPlan;
  readonly job: Job;
  readonly planHash: string;
  readonly choices: Pick<
    HandoffChoices,
    'paper' | 'date' | 'heading' | 'issue' | 'files' | 'program' | 'template'
  >;
  readonly figures: PaperFigures;
  /** One or two a floor, for the stages. */
  readonly gauged: readonly GaugePoint[];
  /** The roomiest of each region, for the finished part. */
  readonly final: readonly InspectionPoint[];
  /** Which face it is for, where both are etched: `plan.far` is the other one then. */
  readonly side?: SheetSide | undefined;
  /** How many templates there are; undefined where none is made. */
  readonly templates: number | undefined;
  /** Those of all sheets of the hand-off. */
  readonly fonts?: SheetFonts | undefined;
}

export interface TravellerPage extends TravellerInput {
  readonly pen: Pen;
  /** mm */
  readonly width: number;
  readonly height: number;
}
