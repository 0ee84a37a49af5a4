/** Templates made in a test, with choices small enough for small parts. */
import { paperFigures } from '#handoff/paper-figures.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { type LabelWords, labelWords } from '#handoff/template/template-words.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';

export type GivenTemplate = NonNullable<JobFile['handoff']>['template'];

export function templateChoices(template: GivenTemplate = undefined): TemplateChoices {
  return handoffChoices(template).template;
}

function handoffChoices(template: GivenTemplate = undefined) {
  const job: JobFile = {
    format: 'isobath-job',
    version: 1,
    drawing: 'lid.dxf',
    stock: { thickness: 2 },
    process: {},
    requirements: [],
    handoff: { template },
  };
  return resolveHandoff(job, 'mm');
}

export function templateWords(plan: Pick<EtchPlan, 'stages'>): LabelWords {
  const job = { ...plainJob(), name: 'Gondola lid' };
  return labelWords({ job, plan }, handoffChoices(), paperFigures('job', 'mm'));
}

/** With all that a label can say: numbers, issue, date, both units, and a part of the opposite hand as seen from its far face. */
export function fullWords(plan: Pick<EtchPlan, 'stages'>): LabelWords {
  const aspect = { part: 'Gondola lid', face: 'far', isOpposite: true } as const;
  const usual = handoffChoices();
  const choices = {
    ...usual,
    heading: { ...usual.heading, part: 'GL-4417-2', drawing: 'GL-4417', revision: 'C' },
    issue: { ...usual.issue, number: 'B' },
    date: '2026-05-31',
  };
  return labelWords({ job: { ...plainJob(), aspect }, plan }, choices, paperFigures('both', 'in'));
}

export function templateOf(
  plan: Pick<EtchPlan, 'stages' | 'sheet'> & Partial<Pick<EtchPlan, 'masking' | 'regions'>>,
  given: GivenTemplate = undefined,
  label: LabelWords = templateWords(plan),
): ReturnType<typeof makeTemplates> {
  return makeTemplates({
    name: 'Gondola lid',
    plan: { masking: 'peel-next', regions: [], ...plan },
    choices: templateChoices(given),
    label,
    overrun: 0,
  });
}
