/** A plan of both faces as the page shows it: one face at a time, each with the stages that both have. */

import type { ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';
import type { BetweenFaces } from '#run/between-faces.ts';

export interface PlanFaces {
  readonly near: ShownPlan;
  /** Seen through the part, as it is drawn; undefined where the near face alone is etched. */
  readonly far: ShownPlan | undefined;
  /** Of a part that is etched on both faces. */
  readonly between?: BetweenFaces | undefined;
}

export function facesOf(shown: ShownPlan): PlanFaces {
  const far = shown.regions.filter(({ face }) => face === 'far');
  if (far.length === 0) return { near: shown, far: undefined };
  const near = shown.regions.filter(({ face }) => face !== 'far');
  return {
    near: ofFace(shown, near, (stage) => stage),
    far: ofFace(shown, far, ({ far: own = NOTHING }) => own),
  };
}

const NOTHING = { piece: [], opening: [], lines: [] };

function ofFace(
  shown: ShownPlan,
  regions: readonly ShownRegion[],
  linesOf: (stage: ShownStage) => Pick<ShownStage, 'piece' | 'opening' | 'lines'>,
): ShownPlan {
  const ids = new Set(regions.map(({ id }) => id));
  return {
    ...shown,
    regions,
    stages: shown.stages.map((stage) => {
      const { far, ...both } = stage;
      const { piece, opening, lines } = linesOf(stage);
      return { ...both, piece, opening, lines, regions: stage.regions.filter((id) => ids.has(id)) };
    }),
  };
}
