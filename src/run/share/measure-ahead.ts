/** Groups that no memory has yet, measured by all threads at once; where there are few, they are left to `measurePlan`. */
import { groupReach } from '#checks/group-reach.ts';
import { stageEnds } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { planGroups } from '#plan/plan-groups.ts';
import { measuredFaces } from '#run/measure-plan.ts';
import {
  type GroupFigures,
  type GroupJob,
  type GroupMemory,
  groupAsk,
  groupFigures,
  groupOfFigures,
  keepGroup,
  keptGroup,
} from '#run/measured-group.ts';
import type { RunOptions } from '#run/run-options.ts';
import { dealOut } from './other-threads.ts';

export async function measureAhead(
  plan: EtchPlan,
  job: GroupJob,
  { memory, threads }: { readonly memory: GroupMemory; readonly threads: RunOptions['threads'] },
): Promise<void> {
  if (threads === undefined) return;
  for (const face of measuredFaces(plan)) {
    const ask = groupAsk(face, job);
    const ends = stageEnds(face);
    const groups = planGroups(face, groupReach(face, job));
    const unknown = groups.flatMap((group, place) =>
      keptGroup(memory, group, ask) === undefined ? [place] : [],
    );
    const { far: _, ...own } = face;
    const figures = await dealOut(unknown, threads, {
      ask: (thread, places) => thread.measure(own, ask.job, places),
      here: (places) => measureAt(face, ask.job, places),
    });
    for (const [place, each] of figures) {
      const group = itemAt(groups, place);
      keepGroup(memory, group, ask, groupOfFigures(group.plan, ask, { figures: each, ends }));
    }
  }
}

/** Of some groups, by their place, what is measured and found: the same wherever it is done. */
export function measureAt(plan: EtchPlan, job: GroupJob, places: readonly number[]): GroupFigures[] {
  const ask = groupAsk(plan, job);
  const ends = stageEnds(plan);
  const groups = planGroups(plan, groupReach(plan, job));
  return places.map((place) => groupFigures(itemAt(groups, place).plan, ask, ends));
}
