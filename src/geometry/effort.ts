/**
 * How much work linework may make, so that a hopeless tangle is reported instead of worked at for minutes. Whoever does the work
 * spends as it goes and stops where there is nothing left; whoever asked for it looks at `exceeded` before using the outcome.
 */
import type { Point } from './point.ts';

/** Pairs of spans that lie near each other, and places where spans meet other than end to end. */
export type EffortKind = 'pairs' | 'meetings';

export type EffortLimits = { readonly [Kind in EffortKind]: number };

export interface EffortExceeded {
  readonly what: EffortKind;
  readonly limit: number;
  /** Where the limit was passed, and the drawn curve there. */
  readonly source: number;
  readonly at: Point;
}

export interface Effort {
  /** False once there was too much of either kind. */
  readonly spend: (what: EffortKind, count: number, where: { source: number; at: Point }) => boolean;
  readonly exceeded: () => EffortExceeded | undefined;
}

export function limitEffort(limits: EffortLimits): Effort {
  const spent = { pairs: 0, meetings: 0 };
  let over: EffortExceeded | undefined;
  return {
    spend: (what, count, { source, at }) => {
      spent[what] += count;
      if (over === undefined && spent[what] > limits[what]) over = { what, limit: limits[what], source, at };
      return over === undefined;
    },
    exceeded: () => over,
  };
}
