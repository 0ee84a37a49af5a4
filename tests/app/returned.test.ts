/** A drawing or a program that comes onto a plan: asked about, held against it and put away, with nothing of the job changed. */
import { beforeAll, describe, expect, test } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { startFollower } from '#app/state/follow-plan.ts';
import { shownReturned } from '#app/state/shown-returned.ts';
import { workbenchActions } from '#app/state/workbench-actions.ts';
import { EMPTY_WORKBENCH, type WorkbenchState } from '#app/state/workbench-state.ts';
import { packContours } from '#app/worker/pack-contours.ts';
import { facesOf } from '#app/worker/plan-faces.ts';
import type { PlanService, ReturnedRequest } from '#app/worker/plan-service.ts';
import type { PlannedPage, ReturnedAnswer } from '#app/worker/planned-page.ts';
import { finding } from '#findings/finding.ts';
import { buoyLidJob } from '#support/drawings/small-drawing.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

const bytes = new Uint8Array([48]);
const DRAWING = { name: 'buoy-lid.dxf', bytes };
const JOB = {
  name: 'lid.job.json',
  bytes: new TextEncoder().encode(JSON.stringify({ ...buoyLidJob, drawing: DRAWING.name })),
};
const BACK = { name: 'back.dxf', bytes };
const PROGRAM = { name: 'back.NC', bytes };

let page: PlannedPage;
beforeAll(async () => {
  const { planFile } = await runLid({ requirements }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  const faces = facesOf(planFile);
  page = {
    plan: faces.near,
    faces,
    run: 7,
    isJudged: true,
    isWhole: true,
    lines: [],
    findings: [],
  } as unknown as PlannedPage;
});

/** With the lid open as a job of the user's own, or as a sample, and planned. */
async function planned(how: 'own' | 'sample' | 'not planned', isScribed = false) {
  const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
  const look = async () => ({ isUsable: true, isScribed, findings: [] });
  const actions = workbenchActions(store, { look, begin: async () => undefined });
  await (how === 'sample' ? actions.openSample([JOB, DRAWING]) : actions.openFiles([JOB, DRAWING]));
  if (how !== 'not planned') store.setState(({ derived }) => ({ derived: { ...derived, page } }));
  return { store, actions, before: store.getState().history };
}

describe('a drawing that comes', () => {
  test('onto a plan is asked about, and the job stays', async () => {
    const { store, actions, before } = await planned('own');
    await actions.openFiles([BACK]);
    expect(store.getState().session.arrived).toBe(BACK);
    expect(store.getState().history).toBe(before);
    actions.leaveArrived();
    expect(store.getState().session.arrived).toBeUndefined();
  });

  test('is the far face of the open job as was chosen: one step, to be taken back, and planned with both', async () => {
    const { store, actions, before } = await planned('own');
    await actions.openFiles([BACK]);
    actions.openAsFarFace(BACK);
    const { document } = store.getState().history?.present ?? {};
    expect([document?.drawing, document?.farDrawing]).toEqual([DRAWING, BACK]);
    expect(document?.job.far).toEqual({ view: 'far', drawing: 'back.dxf' });
    expect(store.getState().session.arrived).toBeUndefined();
    actions.undo();
    expect(store.getState().history?.present.document).toBe(before?.present.document);
  });

  test('with another one is asked about, once the first is open', async () => {
    const { store, actions } = await planned('not planned');
    await actions.openAsNew([{ ...DRAWING, name: 'front.dxf' }, BACK]);
    expect(store.getState().history?.present.document.drawing?.name).toBe('front.dxf');
    expect(store.getState().session.arrived).toBe(BACK);
  });

  test('is held against the plan, or opened as a job of its own, as was chosen', async () => {
    const { store, actions, before } = await planned('own');
    await actions.openFiles([BACK]);
    actions.compareReturned(BACK);
    const { session, history } = store.getState();
    expect([session.arrived, session.returned, session.view]).toEqual([
      undefined,
      { kind: 'scribe', name: 'back.dxf', bytes },
      'plan',
    ]);
    expect(history).toBe(before);
    await actions.openAsNew([BACK]);
    expect(store.getState().history?.present.document.drawing).toBe(BACK);
    expect(store.getState().session.returned).toBeUndefined();
  });

  test('on a sample nobody has changed is asked about only with layers of scribe lines', async () => {
    const plain = await planned('sample');
    await plain.actions.openFiles([BACK]);
    expect(plain.store.getState().history?.present.document.drawing).toBe(BACK);
    const scribed = await planned('sample', true);
    await scribed.actions.openFiles([BACK]);
    expect(scribed.store.getState().session.arrived).toBe(BACK);
  });

  test('opens at once where nothing is planned, and as a new issue under the name of the job’s drawing', async () => {
    const early = await planned('not planned', true);
    await early.actions.openFiles([BACK]);
    expect(early.store.getState().history?.present.document.drawing).toBe(BACK);
    const issue = await planned('own');
    const again = { ...DRAWING };
    await issue.actions.openFiles([again]);
    expect(issue.store.getState().history?.present.document.drawing).toBe(again);
    expect(issue.store.getState().session.arrived).toBeUndefined();
  });
});

test('a program is held against the plan unasked; without one it is refused', async () => {
  const { store, actions, before } = await planned('own');
  await actions.openFiles([PROGRAM]);
  expect(store.getState().session.returned).toEqual({ kind: 'program', name: 'back.NC', bytes });
  expect(store.getState().history).toBe(before);
  const early = await planned('not planned');
  await early.actions.openFiles([PROGRAM]);
  expect(early.store.getState().session.returned).toBeUndefined();
  expect(early.store.getState().session.notice?.text).toMatch(/^back\.NC was not opened: .*its job first/);
});

describe('the comparison', () => {
  const at = { x: 31, y: 17 };
  const square = {
    closed: true,
    vertices: [
      [1, 2, 0],
      [5, 2, 0],
      [5, 9, 0],
    ] as [number, number, number][],
  };
  const answer: ReturnedAnswer = {
    face: 'near',
    lines: packContours([square]),
    findings: [
      finding('returned-piece-missing', { stage: 1, isEarly: false }, { at }),
      finding('returned-edge-lost', { level: 2.4, beside: 1.2, share: 1 }, { at }),
    ],
  };

  test('is asked of the plan on show, shown on it, and gone once it is put away', async () => {
    const { store, actions } = await planned('own');
    const asked: (ReturnedRequest & { run: number })[] = [];
    const service = {
      section: async () => undefined,
      compare: async (run: number, request: ReturnedRequest) => {
        asked.push({ run, ...request });
        return answer;
      },
    } as unknown as PlanService;
    const { stop } = startFollower(store, service);
    actions.compareReturned(BACK);
    await new Promise((resolve) => setTimeout(resolve));
    actions.cutAlong({ from: { x: 0, y: 50 }, to: { x: 200, y: 50 } });
    stop();
    const file = store.getState().session.returned;
    expect(asked).toEqual([{ run: 7, file, face: 'near' }]);
    const { derived, session } = store.getState();
    const shown = shownReturned(derived, session);
    expect(shown?.lines).toEqual([square]);
    expect(shown?.findings).toBe(answer.findings);
    // What follows from the missing piece has a shape, and no word of its own.
    expect(shown?.words).toEqual([{ at, says: 'missing' }]);
    actions.putReturnedAway();
    const after = store.getState();
    expect(after.derived.comparison).toBeUndefined();
    expect(shownReturned(after.derived, after.session)).toBeUndefined();
  });

  test('of the far face is not shown over the near one', async () => {
    const { store, actions } = await planned('own');
    actions.compareReturned(BACK);
    const { returned: file } = store.getState().session;
    if (file === undefined || page.plan === undefined) throw new Error('lines came onto a plan');
    const comparison = { answer: { ...answer, face: 'far' as const }, of: page.plan, file };
    const { session, derived } = store.getState();
    expect(shownReturned({ page, comparison }, session)).toBeUndefined();
    actions.turnOver('far');
    const turned = store.getState().derived.page;
    expect(turned?.plan).not.toBe(derived.page?.plan);
    expect(shownReturned({ page: turned, comparison }, session)?.lines).toEqual([square]);
  });
});
