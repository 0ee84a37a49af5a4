/** What the bench of the front does, in one module, so that it can be bundled and run as users run it. */

import { makeContourKit } from '#front/contours/contour-kit.ts';
import { depthsAt } from '#front/depth-at.ts';
import { type Front, frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { checkedRelief } from '#front/relief/check-relief.ts';
import { reliefMesh } from '#front/relief/relief-mesh.ts';
import { sectionAlong } from '#front/section/section-along.ts';
import { squaredDistanceTransform } from '#oracle/distance-transform.ts';
import { makePlan } from '#plan/make-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { pocketGrid } from '#support/parts/pocket-grid.ts';
import { stageVolumes } from '#support/parts/stage-volumes.ts';

/** The front of 40 × 20 rounded pockets with a deeper one nested in each, three depth classes, planned. */
function gridFront(): Front {
  const grid = pocketGrid(40, 20);
  const part = partOf(grid);
  return frontOfPlan(makePlan({ part, asked: askedAt(part, grid.depths), job: plainJob() }), 5);
}

/** @public */
export const frontWork = {
  gridFront,
  depthsAt,
  indexFront,
  makeContourKit,
  checkedRelief,
  reliefMesh,
  sectionAlong,
  squaredDistanceTransform,
  stageVolumes,
} as const;
