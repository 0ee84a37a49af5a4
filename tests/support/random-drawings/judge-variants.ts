/** One random part, planned as drawn and in every variant: how the plans differ. */
import type { TrialFailure } from '#support/seeds/trials.ts';
import { comparePlanned } from './compare-planned.ts';
import { rollDice } from './dice.ts';
import { drawPart } from './draw-part.ts';
import { variantsOf } from './part-variants.ts';
import { asksOf, planDrawn } from './plan-drawn.ts';
import { linesOf, svgOfLines } from './svg-of-plans.ts';

/** Keeps the variants' own numbers apart from those of the part. */
const OTHER_SEED = 7919;

export async function judgeVariants(seed: number, index: number): Promise<TrialFailure[]> {
  const part = drawPart(seed, index);
  const asks = asksOf(part);
  if (asks.length === 0) return [];
  const first = await planDrawn(part, { curves: part.curves, unit: 'mm', isExploded: false }, asks);
  const failures: TrialFailure[] = [];
  for (const variant of variantsOf(part.curves, rollDice(seed + OTHER_SEED, index))) {
    const placed = asks.map(({ at, depth }) => ({ at: variant.placed(at), depth }));
    const other = await planDrawn(part, variant, placed);
    const differences = comparePlanned(first, other, variant);
    if (differences.length === 0) continue;
    const title = `${part.kind}, ${part.edgeDatum}, ${part.masking}, ${variant.name}`;
    failures.push({
      what: `${title}: ${differences.join('; ')}`,
      picture: () =>
        svgOfLines(title, [
          { color: '#999', width: 1, spans: first.plan?.regions.flatMap(({ loops }) => loops.flat()) ?? [] },
          { color: '#d22', width: 3, spans: linesOf(first.plan) },
          { color: '#22d', width: 1, spans: linesOf(other.plan).map(variant.placedBack) },
        ]),
    });
  }
  return failures;
}
