/** A random part as drawn, and its plan. */
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import type { EdgeDatum, Masking } from '#job/job.ts';
import type { Part } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

export interface DrawnPart {
  readonly kind: string;
  /** All counter-clockwise. */
  readonly sheet: Loop;
  /** Inside the sheet; they may cross outlines, but neither each other nor the sheet. */
  readonly cutouts: readonly Loop[];
  /** What of them lies off the sheet counts for nothing. */
  readonly outlines: readonly Loop[];
  /** Depths asked of the regions one after another, round and round, mm. */
  readonly depths: readonly number[];
  readonly factor: number;
  readonly masking: Masking;
  readonly edgeDatum: EdgeDatum;
}

export function planOfDrawn(drawn: DrawnPart): EtchPlan {
  const { depths, factor, masking, edgeDatum } = drawn;
  const part = onSheet(drawn);
  const asked = new Map(
    part.regions.map(({ id }, index) => [
      id,
      { depth: depths[index % depths.length] ?? 0, plus: 0.05, minus: 0.05 },
    ]),
  );
  return makePlan({ part, asked, job: plainJob({ etchFactor: [[0, factor]], edgeDatum, masking }) });
}

/** What lies in a cutout or beyond the sheet is no region. */
function onSheet({ sheet, cutouts, outlines }: DrawnPart): Part {
  const part = partOf({ sheet, outlines: [...outlines, ...cutouts] });
  const regions = part.regions.filter(
    ({ label }) => isInsideLoops([sheet], label) && !isInsideLoops(cutouts, label),
  );
  const numberOf = new Map(regions.map(({ face }, number) => [face, number]));
  return {
    ...part,
    regions,
    regionOfFace: part.regionOfFace.map((_, face) => numberOf.get(face) ?? -1),
    sheet: [sheet, ...cutouts.map(reverseSpans)],
  };
}
