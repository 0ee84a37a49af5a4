/** Starts the worker and speaks to it: progress goes by a proxy that is let go when the run ends. */
import * as Comlink from 'comlink';
import type { PlanService } from './plan-service.ts';

export function startPlanService(): PlanService {
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  const remote = Comlink.wrap<PlanService>(worker);
  return {
    async plan(request, progress) {
      const reported = Comlink.proxy(progress);
      return await remote.plan(request, reported);
    },
    cancel(run) {
      void remote.cancel(run);
    },
    async relief(tolerance) {
      return await remote.relief(tolerance);
    },
  };
}
