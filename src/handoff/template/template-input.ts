/** What templates are made from, out of the job's own choices. */
import { paperFigures } from '#handoff/paper-figures.ts';
import type { Job } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import type { TemplateInput } from './template-set.ts';
import { labelWords } from './template-words.ts';

export function templateInput({
  job,
  plan,
  choices,
  units,
}: {
  readonly job: Job;
  readonly plan: EtchPlan;
  readonly choices: HandoffChoices;
  readonly units: { readonly job: LengthUnit };
}): TemplateInput {
  const figures = paperFigures(choices.units, units.job === 'in' ? 'in' : 'mm');
  return {
    name: job.name,
    plan,
    choices: choices.template,
    label: labelWords({ job, plan }, choices, figures),
    overrun: choices.overrun,
  };
}
