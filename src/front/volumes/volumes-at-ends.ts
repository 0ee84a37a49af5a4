/** Metal removed from a front, or a part of one, up to the ends of stages of the run, which may be stages of other parts. */

import type { StageEnd } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import { FEW_LEVELS, type Removed, type VolumeMeter } from './volumes.ts';

export interface EndVolumes {
  /** In the order of the ends. */
  readonly upTo: (ends: readonly StageEnd[]) => readonly Removed[];
}

export interface VolumesFound {
  readonly ends: readonly StageEnd[];
  /** In their order. */
  readonly removed: readonly Removed[];
}

const NOTHING: Removed = { volume: 0, gap: undefined };

/**
 * What was found for an end is kept: it does not depend on the others, unless there are so many that only some are integrated.
 * @param deepest level of the front, mm
 * @param meter of the front, asked for when there is something new to measure
 * @param found what `upTo` of the same front came to before
 */
export function endVolumes(deepest: number, meter: () => VolumeMeter, found?: VolumesFound): EndVolumes {
  const known = new Map<string, Removed>();
  const knownTogether = new Map<string, readonly Removed[]>();
  // While all of the deepest level is still to go nothing is cut here.
  const isBegun = ({ toGo }: StageEnd) => toGo < deepest;
  if (found !== undefined) {
    const begun = found.ends.flatMap((end, at) => (isBegun(end) ? [{ end, at }] : []));
    const volumes = begun.map(({ at }) => itemAt(found.removed, at));
    if (begun.length > FEW_LEVELS) knownTogether.set(begun.map(({ end }) => keyOf(end)).join(' '), volumes);
    else for (const [at, { end }] of begun.entries()) known.set(keyOf(end), itemAt(volumes, at));
  }
  const one = (end: StageEnd): Removed => {
    const key = keyOf(end);
    const found = known.get(key) ?? meter().at(end);
    known.set(key, found);
    return found;
  };
  const many = (ends: readonly StageEnd[]): readonly Removed[] => {
    const key = ends.map(keyOf).join(' ');
    const found =
      knownTogether.get(key) ??
      meter().along(
        ends,
        ends.map(({ toGo, downTo }) => Math.min(downTo, deepest - toGo)),
      );
    knownTogether.set(key, found);
    return found;
  };
  return {
    upTo: (ends) => {
      const begun = ends.filter(isBegun);
      const volumes = begun.length > FEW_LEVELS ? many(begun) : begun.map(one);
      const byEnd = new Map(begun.map((end, i) => [end, itemAt(volumes, i)]));
      return ends.map((end) => byEnd.get(end) ?? NOTHING);
    },
  };
}

function keyOf({ toGo, downTo }: StageEnd): string {
  return `${toGo}/${downTo}`;
}
