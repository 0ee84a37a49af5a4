/** Starts the worker and speaks to it; what it sends is put together again here. */
import * as Comlink from 'comlink';
import { itemAt } from '#geometry/assert.ts';
import { nextTask } from './next-task.ts';
import { unpackContours } from './pack-contours.ts';
import { type Unpacker, unpackPlan } from './pack-plan.ts';
import type { DrawingsSent, PlanListener, PlanRequest, PlanService, WorkerService } from './plan-service.ts';
import type { DrawnSheet, PlannedPage } from './planned-page.ts';
import type { WireDrawn, WireJudged, WirePage } from './wire-page.ts';

interface WorkerTie {
  readonly worker: Worker;
  readonly remote: Comlink.Remote<WorkerService>;
  readonly unpackers: { readonly near: Unpacker; readonly far: Unpacker };
  drawn: DrawnSheet;
  hasDrawing: boolean;
}

interface Waiting {
  readonly end: () => void;
  readonly fail: (error: Error) => void;
}

const NOTHING_DRAWN: DrawnSheet = { lines: [], layers: [], notes: [] };

export function startPlanService(): PlanService {
  /** What is under way, to be ended when the worker will not, or can't. */
  const waiting = new Set<Waiting>();
  const endAll = (end: (each: Waiting) => void) => {
    tie = startWorker(broken);
    for (const each of [...waiting]) end(each);
  };
  /** A worker that ended by itself: out of memory, closed by the browser, or never loaded. */
  const broken = (worker: Worker, why: string) => {
    if (worker !== tie.worker) return;
    worker.terminate();
    endAll(({ fail }) => fail(new Error(why)));
  };
  let tie = startWorker(broken);
  let drawings: DrawingsSent | undefined;
  /** A worker that took another's place has no drawing yet. */
  const whole = (request: PlanRequest): PlanRequest => {
    drawings = request.drawings ?? drawings;
    const isThere = tie.hasDrawing;
    tie.hasDrawing = true;
    return isThere || drawings === undefined ? request : { ...request, drawings };
  };
  const unlessEnded = async <Answer>(answer: Promise<Answer>): Promise<Answer | undefined> => {
    let mine: Waiting | undefined;
    const ended = new Promise<undefined>((resolve, fail) => {
      mine = { end: () => resolve(undefined), fail };
      waiting.add(mine);
    });
    try {
      return await Promise.race([answer, ended]);
    } finally {
      if (mine !== undefined) waiting.delete(mine);
    }
  };
  return {
    async plan(request, { progress, planned }) {
      const mine = tie;
      const early = earlyPages(mine, request.run, planned);
      const end = await unlessEnded(
        mine.remote.plan(
          whole(request),
          Comlink.proxy(progress),
          Comlink.proxy(early.receive),
          Comlink.proxy(early.judge),
        ),
      );
      if (end === undefined) return undefined;
      const page = end.page === undefined ? early.last() : unpackPage(mine, request.run, end.page);
      if (page === undefined) return undefined;
      const { findings, results, files, seconds } = end;
      return { ...page, findings, results, files, seconds, isJudged: true, isWhole: true };
    },
    cancel(run) {
      void tie.remote.cancel(run);
    },
    restart() {
      tie.worker.terminate();
      endAll(({ end }) => end());
    },
    readBack: (bytes) => unlessEnded(tie.remote.readBack(bytes)),
    look: (drawing, progress) => unlessEnded(tie.remote.look(drawing, Comlink.proxy(progress))),
    begin: (drawing, unit) => unlessEnded(tie.remote.begin(drawing, unit)),
    relief: (run, request) => unlessEnded(tie.remote.relief(run, request)),
    section: (run, request) => unlessEnded(tie.remote.section(run, request)),
    depth: (run, request) => unlessEnded(tie.remote.depth(run, request)),
    edges: (run) => unlessEnded(tie.remote.edges(run)),
    compare: (run, request) => unlessEnded(tie.remote.compare(run, request)),
  };
}

/** What comes of a run before its end: the plan, then the same with all findings and figures. */
function earlyPages(tie: WorkerTie, run: number, planned: PlanListener['planned']) {
  let page: PlannedPage | undefined;
  const show = async (next: PlannedPage) => {
    page = next;
    await nextTask();
    planned(next);
  };
  return {
    last: () => page,
    receive: (early: WirePage) => show(unpackPage(tie, run, early)),
    judge: async (judged: WireJudged) => {
      if (page !== undefined) await show({ ...page, ...judged, isJudged: true });
    },
  };
}

type OnBroken = (worker: Worker, why: string) => void;

function startWorker(onBroken: OnBroken): WorkerTie {
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  const remote = Comlink.wrap<WorkerService>(worker);
  worker.onerror = ({ message }) => onBroken(worker, message || 'the planning worker could not be started');
  // No event reports a worker that is closed; the browser releases its locks.
  if (navigator.locks !== undefined) {
    const lock = `isobath worker ${crypto.randomUUID()}`;
    void remote
      .hold(lock)
      .then(() =>
        navigator.locks.request(lock, () => onBroken(worker, 'the browser closed the planning worker')),
      );
  }
  const unpackers = { near: { contours: new Map() }, far: { contours: new Map() } };
  return { worker, remote, unpackers, drawn: NOTHING_DRAWN, hasDrawing: false };
}

function unpackPage(
  tie: WorkerTie,
  run: number,
  { findings, plan, far, between, drawn, seconds }: WirePage,
): PlannedPage {
  const near = plan && unpackPlan(tie.unpackers.near, plan);
  if (drawn !== undefined) tie.drawn = unpackDrawn(drawn);
  return {
    ...tie.drawn,
    run,
    findings,
    ...(near && { plan: near, faces: { near, far: far && unpackPlan(tie.unpackers.far, far), between } }),
    files: [],
    seconds,
    isJudged: false,
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
