/** Starts the worker and speaks to it; what it sends is put together again here. */
import * as Comlink from 'comlink';
import { itemAt } from '#geometry/assert.ts';
import { nextTask } from './next-task.ts';
import { unpackContours } from './pack-contours.ts';
import { type Unpacker, unpackPlan } from './pack-plan.ts';
import type { PlanService, WorkerService } from './plan-service.ts';
import type { DrawnSheet, PlannedPage } from './planned-page.ts';
import type { WireDrawn, WirePage } from './wire-page.ts';

interface WorkerTie {
  readonly worker: Worker;
  readonly remote: Comlink.Remote<WorkerService>;
  readonly unpacker: Unpacker;
  drawn: DrawnSheet;
}

const NOTHING_DRAWN: DrawnSheet = { lines: [], layers: [], notes: [] };

export function startPlanService(): PlanService {
  let tie = startWorker();
  /** Ways to end what is under way when the worker will not. */
  const waiting = new Set<() => void>();
  const unlessEnded = async <Answer>(answer: Promise<Answer>): Promise<Answer | undefined> => {
    let end: () => void = () => undefined;
    const ended = new Promise<undefined>((resolve) => {
      end = () => resolve(undefined);
    });
    waiting.add(end);
    try {
      return await Promise.race([answer, ended]);
    } finally {
      waiting.delete(end);
    }
  };
  return {
    async plan(request, { progress, planned }) {
      const mine = tie;
      let early: PlannedPage | undefined;
      const receive = async (page: WirePage) => {
        const unpacked = unpackPage(mine, request.run, page);
        early = unpacked;
        await nextTask();
        planned(unpacked);
      };
      const end = await unlessEnded(
        mine.remote.plan(request, Comlink.proxy(progress), Comlink.proxy(receive)),
      );
      if (end === undefined) return undefined;
      const page = end.page === undefined ? early : unpackPage(mine, request.run, end.page);
      if (page === undefined) return undefined;
      return { ...page, findings: end.findings, files: end.files, seconds: end.seconds, isWhole: true };
    },
    cancel(run) {
      void tie.remote.cancel(run);
    },
    restart() {
      tie.worker.terminate();
      tie = startWorker();
      for (const end of waiting) end();
    },
    readBack: (bytes) => unlessEnded(tie.remote.readBack(bytes)),
    look: (drawing) => unlessEnded(tie.remote.look(drawing)),
    relief: (run, request) => unlessEnded(tie.remote.relief(run, request)),
    section: (run, request) => unlessEnded(tie.remote.section(run, request)),
    depth: (run, request) => unlessEnded(tie.remote.depth(run, request)),
  };
}

function startWorker(): WorkerTie {
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  const remote = Comlink.wrap<WorkerService>(worker);
  return { worker, remote, unpacker: { contours: new Map() }, drawn: NOTHING_DRAWN };
}

function unpackPage(tie: WorkerTie, run: number, { findings, plan, drawn, seconds }: WirePage): PlannedPage {
  if (drawn !== undefined) tie.drawn = unpackDrawn(drawn);
  return {
    ...tie.drawn,
    run,
    findings,
    ...(plan === undefined ? {} : { plan: unpackPlan(tie.unpacker, plan) }),
    files: [],
    seconds,
    isWhole: false,
  };
}

function unpackDrawn({ layersOfLines, lines, ...rest }: WireDrawn): DrawnSheet {
  const contours = unpackContours(lines);
  return {
    lines: layersOfLines.map((layer, index) => ({ layer, contour: itemAt(contours, index) })),
    ...rest,
  };
}
