/** The scribe drawings of a plan: one with a layer a stage, or one a stage. */
import type { CuttingChoices } from '#job/fields/cutting-fields.ts';
import { twoDigits } from '#units/two-digits.ts';
import { type ScribeDrawingInput, type ScribeRelease, scribeDrawing } from './scribe-drawing.ts';

/** Beginnings of the files' names. */
const STEMS: Readonly<Record<ScribeRelease, string>> = { '2000': 'scribe', r12: 'scribe-r12' };

export function scribeFiles(
  input: Omit<ScribeDrawingInput, 'choices' | 'release'>,
  choices: CuttingChoices,
  release: ScribeRelease,
): { readonly name: string; readonly bytes: Uint8Array }[] {
  if (choices.split === 'one-file') {
    return [{ name: scribeName(release), bytes: scribeDrawing({ ...input, choices, release }) }];
  }
  const { sheet, stages, masking } = input.plan;
  return stages.map((stage) => ({
    name: scribeName(release, `-${twoDigits(stage.number)}`),
    bytes: scribeDrawing({
      ...input,
      plan: { sheet, stages: [stage], masking },
      stageCount: stages.length,
      choices,
      release,
    }),
  }));
}

function scribeName(release: ScribeRelease, suffix = ''): string {
  return `${STEMS[release]}${suffix}.dxf`;
}
