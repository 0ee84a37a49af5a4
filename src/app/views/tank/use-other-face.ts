/** The face that is not on show, as the stage in hand leaves it. */
import { faceOnShow } from '#app/state/shown-face.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';

interface OtherFace {
  readonly shown: SheetSide;
  readonly other: SheetSide;
  /** The same stage. */
  readonly stage: ShownStage;
  /** Floors that are bare in it. */
  readonly bare: ShownPlan['regions'];
}

/** Undefined of a part that is etched on one face. */
export function useOtherFace(number: number): OtherFace | undefined {
  const shown = useWorkbenchState(faceOnShow);
  const faces = useWorkbenchState(({ derived }) => derived.page?.faces);
  const other = shown === 'near' ? 'far' : 'near';
  const plan = faces?.[other];
  const stage = plan?.stages.find((each) => each.number === number);
  if (faces?.far === undefined || plan === undefined || stage === undefined) return undefined;
  const bare = plan.regions.filter(({ level }) => level > 0 && level >= stage.level);
  return { shown, other, stage, bare };
}
