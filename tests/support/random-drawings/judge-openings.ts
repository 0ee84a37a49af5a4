/** One random part, somewhere up to 1000 m from the origin: its openings and pieces against buffers of an independent library (JSTS 2.12.1). */
import { expect } from 'vitest';
import { compareOpenings } from '#support/geometry/compare-openings.ts';
import type { TrialFailure } from '#support/seeds/trials.ts';
import { rollDice } from './dice.ts';
import { drawPart } from './draw-part.ts';
import { variantsOf } from './part-variants.ts';
import { asksOf, planDrawn } from './plan-drawn.ts';

/** Keeps the variants' own numbers apart from those of the part. */
const OTHER_SEED = 104_729;

export async function judgeOpenings(seed: number, index: number): Promise<TrialFailure[]> {
  const part = drawPart(seed, index);
  const asks = asksOf(part);
  const moved = variantsOf(part.curves, rollDice(seed + OTHER_SEED, index)).find(
    ({ name }) => name === 'moved',
  );
  if (asks.length === 0 || moved === undefined) return [];
  const { plan } = await planDrawn(
    part,
    moved,
    asks.map(({ at, depth }) => ({ at: moved.placed(at), depth })),
  );
  if (plan === undefined) return [];
  try {
    compareOpenings(plan, { etchFactor: plan.etchFactor, edgeDatum: part.edgeDatum });
    expect(plan.stages.length).toBeGreaterThan(0);
    return [];
  } catch (error) {
    const [first = ''] = String(error instanceof Error ? error.message : error).split('\n');
    return [{ what: `${part.kind}, ${part.edgeDatum}, ${part.masking}: ${first}` }];
  }
}
