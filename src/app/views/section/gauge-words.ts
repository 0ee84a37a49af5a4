/** A reading of the etched part in words: of a part that is etched on both faces, the one on show first. */
import type { SheetSide } from '#job/job.ts';
import type { CutThrough } from '#run/between-faces.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';

interface GaugeOf {
  readonly unit: ShownUnit;
  readonly face: SheetSide;
  /** What the place belongs to, where that is cut through. */
  readonly cut?: CutThrough | undefined;
}

export function gaugeWords(reading: PlaceDepth | undefined, { unit, face, cut }: GaugeOf): string {
  if (reading === undefined) return '…';
  const { depth, target, thickness, stage, far } = reading;
  if (target === undefined) return 'no metal';
  const thick = showLength(thickness, unit);
  if (far === undefined)
    return stage === 0
      ? `untouched, ${thick} thick`
      : `depth ${showLength(depth, unit)}, leaves ${thick}, etched since stage ${stage}`;
  if (stage === 0 && far.stage === 0) return `untouched on both faces, ${thick} thick`;
  if (thickness === 0) return cut === undefined ? 'cut through' : `cut through, ${cuspWords(cut, unit)}`;
  const sides = [
    { face: 'near', depth, stage },
    { face: 'far', depth: far.depth, stage: far.stage },
  ];
  const inOrder = face === 'far' ? sides.reverse() : sides;
  const words = inOrder.map((side) =>
    side.stage === 0
      ? `untouched on the ${side.face} face`
      : `depth ${showLength(side.depth, unit)} from the ${side.face} face since stage ${side.stage}`,
  );
  return `${words.join(', ')}, leaves ${thick}`;
}

function cuspWords({ cusp, depth }: CutThrough, unit: ShownUnit): string {
  return `cusp stands out ${showLength(cusp, unit)} at ${showLength(depth, unit)} deep`;
}
