/**
 * The hand-off of the opposite hand: the part mirrored about the drawing's vertical axis, x = 0, where mirroring twice gives back
 * every figure (M9.8). Stages, ids, levels and minutes are the plan's own; points and sections are the same ones, mirrored; templates are
 * laid out again, so that their words can be read. Every name begins with the hand, for it stands on every file.
 */
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { itemAt } from '#geometry/assert.ts';
import { mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { templateInput } from '#handoff/template/template-input.ts';
import { aspectOf } from '#job/aspect-of.ts';
import type { Job } from '#job/job.ts';
import { mirrorPlan, mirrorTaper } from '#plan/mirror-plan.ts';
import type { PreparedHandoff } from './handoff-types.ts';
import { mirrorChoices } from './mirror-choices.ts';

/** Where the mirror stands in the drawing, mm. */
export const MIRROR = 0;

/** Begins the name of the part on all that is made of it, after the face where one is named. */
export const HAND = 'Opposite hand (mirrored about x = 0): ';

/** Twice the mirror, and the head of the name away, is what it was. */
export function oppositeHand(prepared: PreparedHandoff): PreparedHandoff {
  const { made, kit } = prepared;
  const plan = mirrorPlan(prepared.plan, MIRROR);
  const job = mirrorJob(prepared.job);
  const choices = mirrorChoices(prepared.choices, MIRROR);
  const { thickness } = kit().index.front;
  const turned = makeContourKit(indexFront(frontOfPlan(plan, thickness)));
  return {
    ...prepared,
    plan,
    job,
    choices,
    kit: () => turned,
    made: {
      ...made,
      points: made.points?.map((point) => ({ ...point, at: mirrorPoint(point.at, MIRROR) })),
      sections: made.sections?.map(mirrorSection),
      templates: made.templates && makeTemplates(templateInput({ ...prepared, job, plan, choices })).set,
      solid: made.solid && mirrorSolid(made.solid),
    },
  };
}

function mirrorJob(job: Job): Job {
  const { stock } = job;
  const { thickness } = stock;
  const { part, isOpposite = false, face } = aspectOf(job);
  const { aspect: _, ...as } = job;
  const sided = face === undefined ? {} : { face };
  const turned = isOpposite ? sided : { ...sided, isOpposite: true };
  return {
    ...as,
    name: isOpposite ? part : `${HAND}${part}`,
    ...(Object.keys(turned).length === 0 ? {} : { aspect: { part, ...turned } }),
    stock: {
      ...stock,
      thickness: typeof thickness === 'number' ? thickness : mirrorTaper(thickness, MIRROR),
    },
  };
}

function mirrorSection(section: NamedSection): NamedSection {
  return {
    ...section,
    from: mirrorPoint(section.from, MIRROR),
    to: mirrorPoint(section.to, MIRROR),
    points: section.points.map((point) => ({ ...point, ...mirrorPoint(point, MIRROR) })),
  };
}

/** Mirrored triangles are turned over, so that they are counter-clockwise seen from outside again. */
function mirrorSolid(solid: ReliefMesh): ReliefMesh {
  const positions = solid.positions.map((value, index) => (index % 3 === 0 ? 0 - value : value));
  const indices = solid.indices.map((_, index) =>
    itemAt(solid.indices, index % 3 === 0 ? index : index % 3 === 1 ? index + 1 : index - 1),
  );
  return { ...solid, origin: mirrorPoint(solid.origin, MIRROR), positions, indices };
}
