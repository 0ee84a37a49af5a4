/** What is left between the faces of a part that is etched on both: the least metal anywhere (M9.6), and what is cut through. */
import { thinWebs } from '#checks/web-between.ts';
import type { Job } from '#job/job.ts';
import { sheetAt } from '#job/sheet-at.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import { throughAllowance, undercutOf, wholeUndercut } from '#plan/allowance.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

export interface BetweenFaces {
  /** mm of the nominal sheet, with the far face as far off as the job says; 0 where the etches meet, and what is cut through left aside. */
  readonly least: number | undefined;
  /** Regions of either face that are cut through. */
  readonly cuts: readonly CutThrough[];
}

export interface CutThrough {
  readonly id: string;
  /** mm by which the wall stands out over the surface, where it is narrowest, and how deep from the region's own face that is (M9.4). */
  readonly cusp: number;
  readonly depth: number;
}

/** Undefined for a plan of one face. */
export function betweenFaces(
  plan: EtchPlan,
  { stock: { thickness }, process, far: { registration } }: Pick<Job, 'stock' | 'process' | 'far'>,
): BetweenFaces | undefined {
  const { far } = plan;
  if (far === undefined) return undefined;
  const leastOver = (loops: PlannedRegion['loops']) => thicknessOver(thickness, loops).least;
  const [web] = thinWebs({
    plan,
    far,
    registration,
    sheetAt: (at) => sheetAt(thickness, at),
    leastOver,
    under: Number.POSITIVE_INFINITY,
  });
  const regions = [...plan.regions, ...far.regions];
  const floors = regions.filter(({ level, asked }) => level > 0 && asked.wall === undefined);
  // Where the other face is not near it, a floor leaves what it leaves alone.
  const metal = [
    ...(web === undefined ? [] : [web.web]),
    ...floors.map(({ level, loops }) => leastOver(loops) - level),
  ];
  return {
    least: metal.length === 0 ? undefined : Math.max(0, Math.min(...metal)),
    cuts: regions.flatMap(({ id, level, asked: { wall } }): CutThrough[] => {
      if (level === 0 || wall === undefined) return [];
      const undercut = undercutOf(process, [level]);
      const cusp = wholeUndercut(undercut, level) - throughAllowance(undercut, { level, wall });
      return [{ id, cusp, depth: wall }];
    }),
  };
}
