/**
 * Other threads of the host, which a run may give shares of its work to. A share is plain data and so is what comes back: clusters and groups
 * follow from themselves alone, so that a run comes to the same bytes with any number of threads, or none.
 */
import { itemAt } from '#geometry/assert.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { FaceToOpen } from '#plan/open-clusters.ts';
import type { OpenedCluster } from '#plan/opened-cluster.ts';
import type { GroupFigures, GroupJob } from '#run/measured-group.ts';

/** What one thread can be asked. */
export interface SharedWork {
  readonly open: (face: FaceToOpen, places: readonly number[]) => Promise<readonly OpenedCluster[]>;
  readonly measure: (
    plan: EtchPlan,
    job: GroupJob,
    places: readonly number[],
  ) => Promise<readonly GroupFigures[]>;
}

export interface OtherThreads {
  /** Clusters or groups from which on sharing saves more than it costs: others have to be started, and given the whole face. */
  readonly fewest: number;
  /** Those that there are; started when they are first asked for. */
  readonly start: () => readonly SharedWork[];
}

/** Clusters or groups up to which they are shared: each thread holds a copy of the face, and of larger ones two are more than 4 GB. */
const MOST_SHARED = 100_000;

interface Deal<Done> {
  /** What another thread is asked. */
  readonly ask: (thread: SharedWork, places: readonly number[]) => Promise<readonly Done[]>;
  /** The same, done here. */
  readonly here: (places: readonly number[]) => readonly Done[];
}

/**
 * Deals places out in turn, the first to this thread, which does its own while the others are at theirs. Where another fails, its
 * share is done here. Empty where there is too little to share or too much, or nobody to share with.
 */
export async function dealOut<Done>(
  places: readonly number[],
  threads: OtherThreads | undefined,
  { ask, here }: Deal<Done>,
): Promise<ReadonlyMap<number, Done>> {
  if (threads === undefined || places.length < threads.fewest || places.length > MOST_SHARED)
    return new Map();
  const others = threads.start();
  if (others.length === 0) return new Map();
  const shareOf = (hand: number) => places.filter((_, index) => index % (others.length + 1) === hand);
  const away = others.map(async (other, index) => {
    const share = shareOf(index + 1);
    const done = await ask(other, share).catch(() => undefined);
    return { share, done };
  });
  const own = shareOf(0);
  const made = [{ share: own, done: here(own) }];
  for (const { share, done } of await Promise.all(away)) made.push({ share, done: done ?? here(share) });
  return new Map(
    made.flatMap(({ share, done }) => share.map((place, at) => [place, itemAt(done, at)] as const)),
  );
}
