/** Which stages were looked at in review: on every face that has lines in them. */
import type { PlanFaces } from '#app/worker/plan-faces.ts';
import type { SheetSide } from '#job/job.ts';

/** A stage on show, and the face that was seen. */
export interface FaceLook {
  readonly stage: number;
  readonly face: SheetSide;
}

/** Faces of a stage that were not on show with it yet, those without lines in it left out. */
export function facesToLookAt(
  stage: number,
  looks: readonly FaceLook[],
  faces: PlanFaces | undefined,
): SheetSide[] {
  const own = looks.filter((look) => look.stage === stage).map(({ face }) => face);
  const lined = (['near', 'far'] as const).filter((face) =>
    faces?.[face]?.stages.some(({ number, lines }) => number === stage && lines.length > 0),
  );
  // A stage that cuts nothing is still to be seen once.
  if (lined.length === 0) return own.length === 0 ? ['near'] : [];
  return lined.filter((face) => !own.includes(face));
}
