/** A reading of the etched part in words. */
import type { PlaceDepth } from '#run/depth-job.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';

export function gaugeWords(reading: PlaceDepth | undefined, unit: ShownUnit): string {
  if (reading === undefined) return '…';
  const { depth, target, thickness, stage } = reading;
  if (target === undefined) return 'no metal';
  if (stage === 0) return `untouched, ${showLength(thickness, unit)} thick`;
  return `depth ${showLength(depth, unit)}, leaves ${showLength(thickness, unit)}, etched since stage ${stage}`;
}
