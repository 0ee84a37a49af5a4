/** What the bench of templates runs, in one module that is bundled first. */
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { templateFiles } from '#handoff/template/template-files.ts';
import type { TemplateInput } from '#handoff/template/template-set.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { templateChoices, templateWords } from '#support/handoff/template-of.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { pocketGrid } from '#support/parts/pocket-grid.ts';

/** 40 × 20 rounded pockets with a deeper one nested in each: 1600 closed scribe lines. */
function gridPlan(): EtchPlan {
  const grid = pocketGrid(40, 20);
  const part = partOf(grid);
  return makePlan({ part, asked: askedAt(part, grid.depths), job: plainJob() });
}

function inputFor(plan: EtchPlan): TemplateInput {
  const choices = templateChoices({ paper: 'a1' });
  return { name: 'Grid', plan, choices, label: templateWords(plan), overrun: 0 };
}

/** @public */
export const templateWork = { gridPlan, makeTemplates, templateFiles, inputFor } as const;
