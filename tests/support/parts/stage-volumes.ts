/** What each stage of a whole front removes, in the order of the run. */
import type { ContourKit } from '#front/contours/contour-kit.ts';
import { stageEnds } from '#front/front.ts';
import { type Removed, volumeMeter } from '#front/volumes/volumes.ts';
import { endVolumes } from '#front/volumes/volumes-at-ends.ts';

export interface StageVolume extends Removed {
  /** Stage number. */
  readonly stage: number;
}

export function stageVolumes(kit: ContourKit): StageVolume[] {
  const stages = [...kit.index.front.stages].sort((a, b) => a.number - b.number);
  const masking = stages.some(({ base }) => base > 0) ? 're-mask' : 'peel-next';
  const removed = endVolumes(kit.index.front.stages[0]?.level ?? 0, () => volumeMeter(kit)).upTo(
    stageEnds({ stages, masking }),
  );
  return stages.map(({ number }, i) => ({
    stage: number,
    volume: (removed[i]?.volume ?? 0) - (removed[i - 1]?.volume ?? 0),
    gap: removed[i]?.gap,
  }));
}
