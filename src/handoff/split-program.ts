/**
 * The machine programs of a plan: one for all stages, or one a stage; named so that a folder shows which is which. With a coat
 * a stage there is always one a stage: no program may cut lines of a coat that is not on yet.
 */
import type { ProgramChoices } from '#job/fields/cutting-fields.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { twoDigits } from '#units/two-digits.ts';
import { cutLines } from './cut-lines.ts';
import { machineProgram } from './machine-program.ts';
import { stagesPastEdge } from './run-over-edge.ts';

export interface ProgramFile {
  readonly name: string;
  readonly text: string;
}

interface ProgramInput {
  readonly name: string;
  readonly planHash: string;
  readonly jobUnit: ShownUnit;
  readonly plan: Pick<EtchPlan, 'stages' | 'sheet' | 'masking'>;
  /** mm that lines run on past the sheet's edge where they end at it. */
  readonly overrun: number;
}

export function programFiles(
  { name, planHash, jobUnit, plan, overrun }: ProgramInput,
  choices: ProgramChoices,
): ProgramFile[] {
  const { post } = choices;
  const all = stagesPastEdge(plan, overrun);
  const text = (stages: readonly Stage[]): string =>
    machineProgram({ name, planHash, lines: cutLines(stages, choices), post, jobUnit });
  if (choices.split === 'one-file' && plan.masking === 'peel-next')
    return [{ name: `scribe.${post.ending}`, text: text(all) }];
  return all.map((stage) => ({
    name: `scribe-${twoDigits(stage.number)}.${post.ending}`,
    text: text([stage]),
  }));
}
