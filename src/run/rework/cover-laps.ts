/**
 * A floor that is covered while a shallower one beside it is etched on (M8.5): maskant that laps over the edge onto that floor leaves a rib there,
 * as high as the floor is still etched, unless the undercut from its open side takes all of the lap.
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';

export interface CoverLap {
  readonly cover: string;
  /** The shallower floor that is etched on. */
  readonly onto: string;
  /** mm: of the rib, and how much of a lap the undercut takes. */
  readonly height: number;
  readonly undercut: number;
}

interface Dip {
  readonly etch: number;
  readonly cover: readonly string[];
  readonly open: readonly string[];
}

interface Floors {
  readonly levelOf: ReadonlyMap<string, number>;
  readonly neighbours: ReadonlyMap<string, ReadonlySet<string>>;
  readonly etchFactor: EtchFactor;
}

/** In the order in which floors are covered. */
export function coverLaps(dips: readonly Dip[], { levelOf, neighbours, etchFactor }: Floors): CoverLap[] {
  const depthOf = (id: string) => levelOf.get(id) ?? 0;
  return dips.flatMap(({ cover }, first) =>
    cover.flatMap((id) =>
      [...(neighbours.get(id) ?? [])].flatMap((onto) => {
        if (depthOf(onto) >= depthOf(id) - SAME_LEVEL) return [];
        const height = dips
          .slice(first)
          .reduce((sum, { etch, open }) => (open.includes(onto) ? sum + etch : sum), 0);
        return height === 0
          ? []
          : [{ cover: id, onto, height, undercut: etchFactorAt(etchFactor, height) * height }];
      }),
    ),
  );
}
