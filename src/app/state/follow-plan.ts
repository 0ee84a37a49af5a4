/**
 * Keeps section and relief in step with the plan on show, the cut and the clock. Answers about a plan that was replaced
 * meanwhile are dropped; until the new ones are there the old ones stay on show, known to be behind.
 */
import type { StoreApi } from 'zustand/vanilla';
import { keepLatest } from '#app/state/keeping/keep-latest.ts';
import type { PlanService } from '#app/worker/plan-service.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import type { Point } from '#geometry/point.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import type { ReturnedFile } from '#run/compare/returned-lines.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import { defaultCut } from './default-cut.ts';
import { faceOnShow } from './shown-face.ts';
import type { Derived, SectionLine, WorkbenchState } from './workbench-state.ts';

/**
 * How far facets may stand off the true surface, mm. Fine: below half of the usual depth tolerance, and not to be seen. The
 * draft is what is shown first, and what is turned: as few triangles as the borders allow.
 */
const TOLERANCE = { fine: 0.02, draft: 1 };

export interface Follower {
  /** Depth, thickness and stage at a place of the plan on show, at the clock's minute. */
  readonly gauge: (at: Point) => Promise<PlaceDepth | undefined>;
  /** A drawing of ours as its bytes read back. */
  readonly readBack: (bytes: Uint8Array) => Promise<readonly DrawnLine[] | undefined>;
  readonly stop: () => void;
}

interface FrontQuery {
  readonly face: SheetSide;
  readonly run: number;
  readonly plan: ShownPlan;
  readonly minute: number | undefined;
}

interface ReturnedQuery extends FrontQuery {
  readonly file: ReturnedFile;
}

interface SectionQuery extends FrontQuery {
  readonly cut: SectionLine;
}

export function startFollower(store: StoreApi<WorkbenchState>, service: PlanService): Follower {
  let asked: {
    readonly relief?: FrontQuery;
    readonly section?: SectionQuery;
    readonly edges?: ShownPlan;
    readonly returned?: ReturnedQuery;
  } = {};
  const tie = tieTo(store, service);
  const wantRelief = reliefWanter(tie, (query) => asked.relief === query);
  const wantSection = sectionWanter(tie);
  const wantEdges = edgesWanter(tie);
  const wantReturned = returnedWanter(tie);

  const beginLook = lookBeginner(store);
  const follow = () => {
    const { derived, session } = store.getState();
    const query = frontQuery({ derived, session });
    if (query === undefined || beginLook(query.plan)) return;
    const { cut, view, returned: file } = session;
    const isMeasured = derived.page?.isWhole === true && !derived.isStale;
    if ((session.showsBands || session.edge !== undefined) && isMeasured && asked.edges !== query.plan) {
      asked = { ...asked, edges: query.plan };
      wantEdges(query);
    }
    const isHeld = asked.returned?.plan === query.plan && asked.returned.file === file;
    if (file !== undefined && isMeasured && !isHeld) {
      const returned = { ...query, file };
      asked = { ...asked, returned };
      wantReturned(returned);
    }
    if (view === 'relief' && !isSame(asked.relief, query)) {
      asked = { ...asked, relief: query };
      wantRelief(query);
    }
    if (cut !== undefined && !(isSame(asked.section, query) && asked.section?.cut === cut)) {
      asked = { ...asked, section: { ...query, cut } };
      wantSection({ ...query, cut });
    }
  };
  return {
    gauge: async (at) => {
      const query = frontQuery(store.getState());
      return query && service.depth(query.run, { at, minute: query.minute });
    },
    readBack: (bytes) => service.readBack(bytes),
    stop: store.subscribe(follow),
  };
}

/**
 * Begins to look at another job or drawing, and says whether it did: at the end of its run, cut along the line that the job was
 * kept with, else the usual one. A usual line laid before anything was etched is laid again, through the deepest floor, once there is one;
 * one that was moved meanwhile stays.
 */
function lookBeginner(store: StoreApi<WorkbenchState>): (plan: ShownPlan) => boolean {
  let drawn: readonly DrawnLine[] | undefined;
  let job: string | undefined;
  let early: SectionLine | undefined;
  return (plan) => {
    const { derived, session, openJob } = store.getState();
    const isOtherJob = openJob?.id !== job;
    if (derived.isStale) return false;
    const isEtched = plan.stages.length > 0;
    const isLaidEarly = isEtched && early !== undefined && session.cut === early;
    if (derived.page?.lines === drawn && !isOtherJob && !isLaidEarly) return false;
    drawn = derived.page?.lines;
    job = openJob?.id;
    const kept = isOtherJob ? session.cut : undefined;
    const cut = kept ?? defaultCut(plan, derived.shapes);
    early = kept === undefined && !isEtched ? cut : undefined;
    store.setState(({ session: now }) => ({ session: { ...now, cut, minute: undefined, edge: undefined } }));
    return true;
  };
}

/** Of the face on show; undefined where there is no plan. */
function frontQuery({
  derived,
  session,
}: Pick<WorkbenchState, 'derived' | 'session'>): FrontQuery | undefined {
  const { run, plan } = derived.page ?? {};
  if (run === undefined || plan === undefined) return undefined;
  return { run, plan, face: faceOnShow({ derived }), minute: session.minute };
}

/** How answers come to be shown, those about the plan on show alone. */
interface Tie {
  readonly service: PlanService;
  readonly derived: () => Derived;
  readonly derive: (change: Partial<Derived>) => void;
  readonly isOnShow: (query: FrontQuery) => boolean;
  readonly fail: (error: unknown) => void;
}

function tieTo(store: StoreApi<WorkbenchState>, service: PlanService): Tie {
  const derive = (change: Partial<Derived>) =>
    store.setState(({ derived }) => ({ derived: { ...derived, ...change } }));
  return {
    service,
    derive,
    derived: () => store.getState().derived,
    isOnShow: ({ plan }) => store.getState().derived.page?.plan === plan,
    fail: (error) => derive({ failure: error instanceof Error ? error.message : String(error) }),
  };
}

/** The draft first; the fine one after it, unless another is asked for by then. */
function reliefWanter(
  { service, derived, derive, isOnShow, fail }: Tie,
  isAsked: (query: FrontQuery) => boolean,
) {
  const wantFine = keepLatest(
    reliefAsker(service, 'fine'),
    (answer, query) => {
      const { relief } = derived();
      if (relief === undefined || relief.of !== query.plan || relief.minute !== query.minute) return;
      const { mesh: fine, heldBack } = answer;
      const mesh = fine && { draft: relief.mesh?.draft ?? fine, fine };
      derive({ relief: { ...relief, mesh, heldBack } });
    },
    fail,
  );
  return keepLatest(
    reliefAsker(service, 'draft'),
    (answer, query) => {
      if (!isOnShow(query)) return;
      const { mesh: draft, heldBack } = answer;
      const mesh = draft && { draft, fine: undefined };
      derive({ relief: { mesh, heldBack, of: query.plan, minute: query.minute } });
      if (isAsked(query)) wantFine(query);
    },
    fail,
  );
}

function sectionWanter({ service, derive, isOnShow, fail }: Tie) {
  return keepLatest(
    ({ run, minute, cut }: SectionQuery) => service.section(run, { ...cut, minute }),
    (section, query) => {
      if (!isOnShow(query)) return;
      derive({ section: { section, of: query.plan, minute: query.minute, cut: query.cut } });
    },
    fail,
  );
}

function edgesWanter({ service, derive, isOnShow, fail }: Tie) {
  return keepLatest(
    ({ run }: FrontQuery) => service.edges(run),
    (drawn, query) => {
      if (isOnShow(query)) derive({ edges: { drawn, of: query.plan } });
    },
    fail,
  );
}

function returnedWanter({ service, derive, isOnShow, fail }: Tie) {
  return keepLatest(
    ({ run, face, file }: ReturnedQuery) => service.compare(run, { file, face }),
    (answer, query) => {
      if (isOnShow(query)) derive({ comparison: { answer, of: query.plan, file: query.file } });
    },
    fail,
  );
}

function reliefAsker(service: PlanService, how: keyof typeof TOLERANCE) {
  return ({ run, face, minute }: FrontQuery) =>
    service.relief(run, { face, minute, tolerance: TOLERANCE[how] });
}

function isSame(a: FrontQuery | undefined, b: FrontQuery): boolean {
  return a !== undefined && a.run === b.run && a.plan === b.plan && a.minute === b.minute;
}
