/**
 * What a hole in the maskant and a scratch come to (M8.6), as the front has it (M2.2): a leak is an opening of no size, so that what it etches is
 * a ball, φ times as wide as it is deep; a scratch is a line that lies deeper from the start.
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import type { Job } from '#job/job.ts';

export interface Leak {
  /** Immersed minutes since the maskant opened. */
  readonly since: number;
  /** Deepest place now, and after so many more minutes, mm. */
  readonly depth: number;
  readonly depthThen: number;
  /** Radius at the surface by then. */
  readonly radiusThen: number;
}

/** @param radius of the crater at the surface, as found on land */
export function leakOf(
  { etchFactor, rate }: Pick<Job['process'], 'etchFactor' | 'rate'>,
  { radius, minutesLeft }: { readonly radius: number; readonly minutesLeft: number },
): Leak {
  const depth = depthOfReach(etchFactor, radius);
  const depthThen = depth + rate * minutesLeft;
  return {
    since: depth / rate,
    depth,
    depthThen,
    radiusThen: etchFactorAt(etchFactor, depthThen) * depthThen,
  };
}

const HALVINGS = 60;

/** The depth whose undercut is a radius: φ(D) · D rises with D. */
function depthOfReach(etchFactor: EtchFactor, radius: number): number {
  const factors = etchFactor.map(([, factor]) => factor);
  let [low, high] = [radius / Math.max(...factors), radius / Math.min(...factors)];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (etchFactorAt(etchFactor, middle) * middle < radius) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Half the width, mm, of a narrow scratch in a floor that is etched to a depth; it stays as deep below the floor as it was. */
export function scratchHalfWidth(
  { etchFactor }: Pick<Job['process'], 'etchFactor'>,
  { scratch, depth }: { readonly scratch: number; readonly depth: number },
): number {
  return etchFactorAt(etchFactor, depth) * Math.sqrt(2 * depth * scratch - scratch * scratch);
}
