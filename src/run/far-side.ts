/**
 * The hand-off of the far face as it is seen from its own side (M9.7): mirrored about the drawing's vertical axis, x = 0, with the
 * same tooling holes as the near face. Only what is laid on that face or cut on it is made of it.
 */
import type { Finding } from '#findings/finding.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { mirrorPath, mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { checkPaper } from '#handoff/template/template-files.ts';
import { templateInput } from '#handoff/template/template-input.ts';
import { aspectOf } from '#job/aspect-of.ts';
import type { Job } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { mirrorPlan } from '#plan/mirror-plan.ts';
import type { HandoffInput, PreparedHandoff } from './handoff-types.ts';
import { mirrorChoices } from './mirror-choices.ts';

/** Where the mirror stands in the drawing, mm. */
export const MIRROR = 0;

/** Begins the name of the part on all that is made of the far face. */
export const FAR_FACE = 'Far face';
const FACE = `${FAR_FACE} (seen from it, mirrored about x = 0): `;
const NEAR = 'Near face (both are in the bath at once): ';

/** What is laid on the near face or cut on it, with a mark of that face. */
export function nearSide(prepared: PreparedHandoff): PreparedHandoff {
  const { job, made } = prepared;
  const { templates } = made;
  const named: Job = { ...job, name: `${NEAR}${job.name}`, aspect: { ...aspectOf(job), face: 'near' } };
  return {
    ...prepared,
    side: 'near',
    job: named,
    made: {
      ...made,
      templates: templates && { ...templates, input: templateInput({ ...prepared, job: named }) },
    },
  };
}

/** Undefined where no line is cut on the far face. */
export function farSide(prepared: PreparedHandoff): PreparedHandoff | undefined {
  const turned = turnOver(prepared);
  if (turned === undefined) return undefined;
  const { made, kit, far } = prepared;
  const { thickness } = kit().index.front;
  const near = mirrorPlan(alone(prepared.plan), MIRROR);
  const kitOf = (face: EtchPlan) => {
    const made = makeContourKit(indexFront(frontOfPlan(face, thickness)));
    return () => made;
  };
  return {
    ...prepared,
    ...turned,
    side: 'far',
    plan: { ...turned.plan, far: near },
    kit: kitOf(turned.plan),
    far: far && { ...far, kit: kitOf(near) },
    made: {
      lines: true,
      pictures: made.pictures,
      points: made.points
        ?.filter(({ face }) => face === 'far')
        .map((point) => ({ ...point, at: mirrorPoint(point.at, MIRROR) })),
      sections: undefined,
      solid: undefined,
      templates: templatesOf(turned).set,
    },
  };
}

function alone({ far: _, ...plan }: EtchPlan): EtchPlan {
  return plan;
}

/** What stands in the way of the far face's templates, in the part's own frame. */
export function farTemplateFindings(input: Turned): readonly Finding[] {
  const turned = turnOver(input);
  if (turned === undefined) return [];
  const { set, findings } = templatesOf(turned);
  return [...findings, ...(set === undefined ? [] : checkPaper(set))].map(turnedBack);
}

type Turned = Pick<HandoffInput, 'plan' | 'job' | 'choices' | 'units'>;

function turnOver({ plan: { far }, job, choices, units }: Turned): Turned | undefined {
  if (far === undefined || far.stages.every(({ lines }) => lines.length === 0)) return undefined;
  return {
    plan: mirrorPlan(far, MIRROR),
    job: { ...job, name: `${FACE}${job.name}`, aspect: { ...aspectOf(job), face: 'far' } },
    choices: mirrorChoices(choices, MIRROR),
    units,
  };
}

function templatesOf(turned: Turned): ReturnType<typeof makeTemplates> {
  return makeTemplates(templateInput(turned));
}

function turnedBack(found: Finding): Finding {
  const { at, outline } = found.place;
  const place = {
    ...found.place,
    ...(at === undefined ? {} : { at: mirrorPoint(at, MIRROR) }),
    ...(outline === undefined ? {} : { outline: outline.map((path) => mirrorPath(path, MIRROR)) }),
  };
  return { ...found, place } as Finding;
}
