/** Layers of a stage in DXF files of the hand-off: what they carry, then the number of the stage in two digits. */
import { twoDigits } from '#units/two-digits.ts';

/** Scribe lines, slots of a template and what is printed beside them, metal that a stage takes in a section. */
const KINDS = ['SCRIBE', 'SLOT', 'MARK', 'TAKEN'] as const;

export function stageLayer(kind: (typeof KINDS)[number], stage: number): string {
  return `${kind}-${twoDigits(stage)}`;
}

/** Number of the stage that a layer belongs to; undefined for a layer of no stage. */
export function stageOfLayer(layer: string): number | undefined {
  const [kind, number] = layer.split('-');
  return KINDS.some((each) => each === kind) ? Number(number) : undefined;
}
