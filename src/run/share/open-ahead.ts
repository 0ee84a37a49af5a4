/** Clusters that no memory has yet, opened by all threads at once; where there are few, they are left to the plan. */
import type { LevelledPlan } from '#plan/make-plan.ts';
import { keepOpened, openAt, unopenedClusters } from '#plan/open-clusters.ts';
import type { RunOptions } from '#run/run-options.ts';
import { dealOut } from './other-threads.ts';

export async function openAhead({ faces }: LevelledPlan, threads: RunOptions['threads']): Promise<void> {
  if (threads === undefined) return;
  for (const { toOpen, face } of faces) {
    const opened = await dealOut(unopenedClusters(toOpen, face.memory), threads, {
      ask: (thread, places) => thread.open(toOpen, places),
      here: (places) => openAt(toOpen, places),
    });
    if (opened.size > 0) keepOpened(toOpen, face.memory, opened);
  }
}
