/** The etched part to look at. */
import { solidTolerance } from '#handoff/solid/etched-solid.ts';
import { glbFile } from '#handoff/solid/glb-file.ts';
import { movedSolid, type Writer } from '#run/handoff-files.ts';

export const write: Writer<'glb'> = ({ plan, job, kit, solid, planHash, origin }) => {
  const tolerance = solidTolerance(kit());
  const bytes = glbFile({
    name: job.name,
    planHash,
    mesh: movedSolid(solid, origin),
    tolerance,
    stages: plan.stages,
  });
  return [{ name: 'etched-part.glb', what: 'the etched part to look at, a colour a stage', bytes }];
};
