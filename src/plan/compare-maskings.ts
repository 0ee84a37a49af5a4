/**
 * One coat for the whole run beside a new coat for each stage (M4.7): both reach the same levels in the same minutes and with the same
 * share of tolerance; what differs is coats, walls and lines. All from levels and which floors touch: no opening is placed.
 */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { etchMinutes } from '#bath/etch-minutes.ts';
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import type { MaskingChoice, WallShape } from '#job/formats/plan-file.ts';
import type { Job, Masking } from '#job/job.ts';
import type { RegionId } from '#part/part.ts';
import { allowance, cornerRadius, undercutOf } from './allowance.ts';
import { bandShare, type DepthBand } from './fewest-levels.ts';

/** One side of the sheet. */
export interface MaskedFace {
  readonly arrangement: Arrangement;
  /** Level by face: 0 for land, -1 where there is no metal. */
  readonly levels: Float64Array;
}

export interface MaskingInput {
  /** One or both. */
  readonly sides: readonly MaskedFace[];
  /** What is asked of the levels, by region of the drawing: etched ones only. */
  readonly bands: ReadonlyMap<RegionId, DepthBand>;
  readonly process: Job['process'];
}

interface StepPair {
  readonly level: number;
  readonly beside: number;
}

/** Both ways, the plain one first; none where there are not two levels, for then they are the same. */
export function compareMaskings({ sides, bands, process }: MaskingInput): MaskingChoice[] {
  const rising = [...new Set(sides.flatMap(({ levels }) => [...levels]))]
    .filter((level) => level > 0)
    .sort((a, b) => a - b);
  const deepest = rising.at(-1);
  if (deepest === undefined || rising.length < 2) return [];
  const steps = stepsOf(sides);
  const worst = worstOf(bands, rising);
  return (['peel-next', 're-mask'] as const).map((masking) => {
    const isRemasked = masking === 're-mask';
    const walls = steps.map((step) => wallOf(step, { process: { ...process, masking }, rising }));
    return {
      masking,
      stages: rising.length,
      coats: isRemasked ? rising.length : 1,
      minutes: etchMinutes({ depth: deepest, rate: process.rate }),
      ...worst,
      overhang: Math.max(...overhangs(steps, { masking, rising, process })),
      walls,
    };
  });
}

/** Every pair of floors that touch, and of floor and land, once: deepest first. */
function stepsOf(sides: readonly MaskedFace[]): StepPair[] {
  const besides = new Map<number, Set<number>>();
  for (const { arrangement, levels } of sides) {
    for (const { left, right } of arrangement.edges) {
      const [a, b] = [levels[left] ?? -1, levels[right] ?? -1];
      const [level, beside] = [Math.max(a, b), Math.min(a, b)];
      if (beside < 0 || level === beside) continue;
      const known = besides.get(level);
      if (known === undefined) besides.set(level, new Set([beside]));
      else known.add(beside);
    }
  }
  const steps = [...besides].flatMap(([level, found]) => [...found].map((beside) => ({ level, beside })));
  return steps.sort((a, b) => b.level - a.level || b.beside - a.beside);
}

/** Levels are the same for both ways, and so is what they leave to be desired. */
function worstOf(
  bands: ReadonlyMap<RegionId, DepthBand>,
  levels: readonly number[],
): Pick<MaskingChoice, 'worstShare' | 'worstDeviation'> {
  let worstShare = 0;
  let worstDeviation = 0;
  for (const band of new Set(bands.values())) {
    // A taper may run out to land.
    const worst = bandShare(band.high > band.low ? [0, ...levels] : levels, band);
    if (worst === undefined) continue;
    worstShare = Math.max(worstShare, worst.share);
    worstDeviation = Math.max(worstDeviation, Math.abs(worst.level - worst.depth));
  }
  return { worstShare, worstDeviation };
}

interface Way {
  readonly process: Job['process'];
  readonly rising: readonly number[];
}

function wallOf({ level, beside }: StepPair, { process, rising }: Way): WallShape {
  const undercut = undercutOf(process, rising);
  const step = { level, depth: beside };
  return {
    level,
    beside,
    allowance: allowance(undercut, step),
    fillet: process.masking === 're-mask' ? level - floorBelow(rising, level) : level,
    corner: cornerRadius(undercut, step),
  };
}

/** How far maskant stands out at each step by the time that it is peeled or taken off. */
function overhangs(
  steps: readonly StepPair[],
  { masking, rising, process }: Way & { readonly masking: Masking },
): number[] {
  const cuts =
    masking === 're-mask'
      ? rising.map((level) => level - floorBelow(rising, level))
      : steps.map(({ level, beside }) => level - beside);
  return cuts.map((cut) => cut * etchFactorAt(process.etchFactor, cut));
}

function floorBelow(rising: readonly number[], level: number): number {
  return rising.findLast((each) => each < level) ?? 0;
}
