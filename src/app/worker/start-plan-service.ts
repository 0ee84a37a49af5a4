/** Starts the worker and speaks to it. */
import * as Comlink from 'comlink';
import type { PlanService, WorkerService } from './plan-service.ts';
import type { PlannedPage } from './planned-page.ts';

export function startPlanService(): PlanService {
  let { worker, remote } = startWorker();
  /** Ways to end the runs under way when the worker will not. */
  const waiting = new Set<(page: PlannedPage | undefined) => void>();
  return {
    async plan(request, progress) {
      let end: (page: PlannedPage | undefined) => void = () => undefined;
      const ended = new Promise<PlannedPage | undefined>((resolve) => {
        end = resolve;
      });
      waiting.add(end);
      try {
        return await Promise.race([remote.plan(request, Comlink.proxy(progress)), ended]);
      } finally {
        waiting.delete(end);
      }
    },
    cancel(run) {
      void remote.cancel(run);
    },
    restart() {
      worker.terminate();
      ({ worker, remote } = startWorker());
      for (const end of waiting) end(undefined);
    },
    async relief(tolerance) {
      return await remote.relief(tolerance);
    },
  };
}

function startWorker(): { readonly worker: Worker; readonly remote: Comlink.Remote<WorkerService> } {
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  return { worker, remote: Comlink.wrap<WorkerService>(worker) };
}
