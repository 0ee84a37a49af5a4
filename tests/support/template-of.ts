/** Templates made in a test, with choices small enough for small parts. */
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { resolveTemplate, type TemplateChoices } from '#job/template-choices.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export type GivenTemplate = Parameters<typeof resolveTemplate>[0];

function templateChoices(given: GivenTemplate = undefined): TemplateChoices {
  return resolveTemplate(given, { unit: 'mm', drawingUnit: 'mm', paper: 'a4' });
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
