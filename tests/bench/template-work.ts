/** What the bench of templates runs, in one module that is bundled first. */
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { templateFiles } from '#handoff/template/template-files.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { askedAt, partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { pocketGrid } from '#support/pocket-grid.ts';
import { templateChoices } from '#support/template-of.ts';

/** 40 × 20 rounded pockets with a deeper one nested in each: 1600 closed scribe lines. */
function gridPlan(): EtchPlan {
  const grid = pocketGrid(40, 20);
  const part = partOf(grid);
  return makePlan({ part, asked: askedAt(part, grid.depths), job: plainJob() });
}

const choices = templateChoices({ paper: 'a1' });

/** @public */
export const templateWork = { gridPlan, makeTemplates, templateFiles, choices } as const;
