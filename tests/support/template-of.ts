/** Templates made in a test, with choices small enough for small parts. */
import { makeTemplates } from '#handoff/template/make-templates.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export type GivenTemplate = NonNullable<JobFile['handoff']>['template'];

export function templateChoices(template: GivenTemplate = undefined): TemplateChoices {
  const job: JobFile = {
    format: 'isobath-job',
    version: 1,
    drawing: 'lid.dxf',
    stock: { thickness: 2 },
    process: {},
    requirements: [],
    handoff: { template },
  };
  return resolveHandoff(job, 'mm').template;
}

export function templateOf(
  plan: Pick<EtchPlan, 'stages' | 'sheet'> & Partial<Pick<EtchPlan, 'masking'>>,
  given: GivenTemplate = undefined,
): ReturnType<typeof makeTemplates> {
  return makeTemplates({
    name: 'Gondola lid',
    plan: { masking: 'peel-next', ...plan },
    choices: templateChoices(given),
  });
}
