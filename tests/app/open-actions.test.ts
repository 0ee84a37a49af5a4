/** A drawing is looked at before it is opened: one that could not be is not opened, and never kept. */
import { expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { LookAtDrawing } from '#app/state/opening/open-actions.ts';
import { workbenchActions } from '#app/state/workbench-actions.ts';
import { EMPTY_WORKBENCH, type WorkbenchState } from '#app/state/workbench-state.ts';
import { buoyLidJob } from '#support/drawings/small-drawing.ts';

const DRAWING = { name: 'buoy-lid.dxf', bytes: new Uint8Array([48]) };
const JOB = {
  name: 'lid.job.json',
  bytes: new TextEncoder().encode(JSON.stringify({ ...buoyLidJob, drawing: DRAWING.name })),
};

function workbench(lookAt: LookAtDrawing) {
  const store = createStore<WorkbenchState>(() => EMPTY_WORKBENCH);
  return { store, actions: workbenchActions(store, { look: lookAt, begin: async () => undefined }) };
}

it('opens a drawing that was looked at', async () => {
  const { store, actions } = workbench(async () => ({ isUsable: true, isScribed: false, findings: [] }));
  await actions.openFiles([JOB, DRAWING]);
  expect(store.getState().history?.present.document.drawing).toBe(DRAWING);
});

it('a cancelled check opens nothing, and reports it', async () => {
  const { store, actions } = workbench(async () => undefined);
  await actions.openFiles([JOB, DRAWING]);
  expect(store.getState().history).toBeUndefined();
  expect(store.getState().session.notice?.text).toMatch(
    /^buoy-lid\.dxf was not opened: reading it was stopped/,
  );
});

it('a failed check opens nothing, and reports it', async () => {
  const { store, actions } = workbench(() => Promise.reject(new Error('out of memory')));
  await actions.openFiles([JOB, DRAWING]);
  expect(store.getState().history).toBeUndefined();
  expect(store.getState().session.notice?.text).toMatch(/broke off \(out of memory\)/);
});

it('a long look is reported with its drawing, and no more once it has ended', {
  tags: ['long'],
}, async () => {
  let end = (): void => undefined;
  const { store, actions } = workbench(
    (_, report) =>
      new Promise((resolve) => {
        report(0.4, 'walking the drawing');
        end = () => resolve(undefined);
      }),
  );
  const opening = actions.openFiles([JOB, DRAWING]);
  await new Promise((resolve) => setTimeout(resolve, 520));
  expect(store.getState().derived.looking).toEqual({
    name: 'buoy-lid.dxf',
    share: 0.4,
    what: 'walking the drawing',
  });
  end();
  await opening;
  expect(store.getState().derived.looking).toBeUndefined();
});
