/** The run as a reviewer goes through it: for each stage what is peeled, what is bare, what is sealed, and how deep it goes. */
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';

export interface StageStep {
  readonly stage: ShownStage;
  /** Numbers of the stages whose pieces are off, this one's last. */
  readonly bare: readonly number[];
  /** Immersed minutes of the run when it goes in and when it comes out. */
  readonly from: number;
  readonly to: number;
  /**
   * Floors of each peeled stage, mm below the as-received surface when it goes in and when it comes out. None with a coat a
   * stage: a floor is then covered in some stages, and the section shows how deep it is.
   */
  readonly floors: readonly { readonly stage: number; readonly before: number; readonly after: number }[];
}

export function stageSteps({ stages, masking }: ShownPlan): StageStep[] {
  return stages.map((stage, index) => {
    const isOneCoat = masking === 'peel-next';
    const peeled = stages.slice(isOneCoat ? 0 : index, index + 1);
    return {
      stage,
      bare: peeled.map(({ number }) => number),
      from: stage.startMinute,
      to: stage.startMinute + stage.minutes,
      floors: (isOneCoat ? peeled : []).map(({ number }, first) => {
        const etched = (end: number) => stages.slice(first, end).reduce((sum, { etch }) => sum + etch, 0);
        return { stage: number, before: etched(index), after: etched(index + 1) };
      }),
    };
  });
}
