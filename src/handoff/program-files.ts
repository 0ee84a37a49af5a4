/**
 * The machine programs of a plan: one for all stages, or one a stage; named so that a folder shows which is which. With a coat
 * a stage there is always one a stage: no program may cut lines of a coat that is not on yet.
 */
import type { ProgramChoices } from '#part/cutting-choices.ts';
import { POST_ENDINGS } from '#part/post-file.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { cutLines } from './cut-lines.ts';
import { machineProgram } from './machine-program.ts';

export interface ProgramFile {
  readonly name: string;
  readonly text: string;
}

/** Most stages that a folder is searched for programs of an earlier plan. */
const MOST_STAGES = 99;

/** Every name that a program can have: those of an earlier plan are taken away. */
export function programNames(): string[] {
  const numbers = Array.from({ length: MOST_STAGES }, (_, index) => stageName(index + 1));
  return POST_ENDINGS.flatMap((ending) => ['scribe', ...numbers].map((name) => `${name}.${ending}`));
}

function stageName(stage: number): string {
  return `scribe-${String(stage).padStart(2, '0')}`;
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
    name: `${stageName(stage.number)}.${post.ending}`,
    text: text([stage]),
  }));
}
