/** Groups that no memory has yet, measured by all threads at once; where there are few, they are left to `measurePlan`, which is given what comes of it. */
import { groupReach } from '#checks/group-reach.ts';
import { stageEnds } from '#front/front.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { planGroups } from '#plan/plan-groups.ts';
import { type FaceAhead, measuredFaces } from '#run/measure-plan.ts';
import {
  type GroupFigures,
  type GroupJob,
  type GroupMemory,
  groupAsk,
  groupFigures,
  keptGroup,
} from '#run/measured-group.ts';
import type { RunOptions } from '#run/run-options.ts';
import { dealOut } from './other-threads.ts';

export async function measureAhead(
  plan: EtchPlan,
  job: GroupJob,
  { memory, threads }: { readonly memory: GroupMemory | undefined; readonly threads: RunOptions['threads'] },
): Promise<FaceAhead[]> {
  if (threads === undefined) return [];
  const faces: FaceAhead[] = [];
  for (const face of measuredFaces(plan)) {
    const ask = groupAsk(face, job);
    const groups = planGroups(face, groupReach(face, job));
    const isUnknown = (place: number) =>
      memory === undefined || keptGroup(memory, groups.at(place), ask) === undefined;
    const unknown = Array.from({ length: groups.count }, (_, place) => place).filter(isUnknown);
    const { far: _, ...own } = face;
    const figures = await dealOut(unknown, threads, {
      ask: (thread, places) => thread.measure(own, ask.job, places),
      here: (places) => measureAt(face, ask.job, places),
    });
    faces.push({ groups, figures });
  }
  return faces;
}

/** Of some groups, by their place, what is measured and found: the same wherever it is done. */
export function measureAt(plan: EtchPlan, job: GroupJob, places: readonly number[]): GroupFigures[] {
  const ask = groupAsk(plan, job);
  const ends = stageEnds(plan);
  const groups = planGroups(plan, groupReach(plan, job));
  return places.map((place) => groupFigures(groups.at(place).plan, ask, ends));
}
