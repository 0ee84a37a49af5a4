/** What another thread does when it is asked: the host exposes this there. */
import { openAt } from '#plan/open-clusters.ts';
import { measureAt } from './measure-ahead.ts';
import type { SharedWork } from './other-threads.ts';

export const sharedWork: SharedWork = {
  open: async (face, places) => openAt(face, places),
  measure: async (plan, job, places) => measureAt(plan, job, places),
};
