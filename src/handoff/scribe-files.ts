/** The scribe drawings of a plan: one with a layer a stage, or one a stage. */
import type { CuttingChoices } from '#part/cutting-choices.ts';
import { type ScribeDrawingInput, scribeDrawing } from './scribe-drawing.ts';

export function scribeFiles(
  input: Omit<ScribeDrawingInput, 'choices'>,
  choices: CuttingChoices,
): { readonly name: string; readonly bytes: Uint8Array }[] {
  if (choices.split === 'one-file') {
    return [{ name: 'scribe.dxf', bytes: scribeDrawing({ ...input, choices }) }];
  }
  const { sheet, stages, masking } = input.plan;
  return stages.map((stage) => ({
    name: `scribe-${String(stage.number).padStart(2, '0')}.dxf`,
    bytes: scribeDrawing({ ...input, plan: { sheet, stages: [stage], masking }, choices }),
  }));
}
