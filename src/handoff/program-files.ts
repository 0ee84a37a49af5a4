/**
 * The machine programs of a plan: one for all stages, or one a stage; named so that a folder shows which is which. With a coat
 * a stage there is always one a stage: no program may cut lines of a coat that is not on yet.
 */
import type { ProgramChoices } from '#job/fields/cutting-fields.ts';
import { twoDigits } from '#job/handoff-list.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { cutLines } from './cut-lines.ts';
import { machineProgram } from './machine-program.ts';

export interface ProgramFile {
  readonly name: string;
  readonly text: string;
}

export function programFiles(
  { name, planHash, plan }: { readonly name: string; readonly planHash: string; readonly plan: EtchPlan },
  choices: ProgramChoices,
): ProgramFile[] {
  const { post } = choices;
  const text = (stages: readonly Stage[]): string =>
    machineProgram({ name, planHash, lines: cutLines(stages, choices), post });
  if (choices.split === 'one-file' && plan.masking === 'peel-next')
    return [{ name: `scribe.${post.ending}`, text: text(plan.stages) }];
  return plan.stages.map((stage) => ({
    name: `scribe-${twoDigits(stage.number)}.${post.ending}`,
    text: text([stage]),
  }));
}
