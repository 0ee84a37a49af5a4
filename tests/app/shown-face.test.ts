import { expect, test } from 'vitest';
import {
  faceOnShow,
  hasFarFace,
  isBehindEtched,
  onFace,
  otherFace,
  turnedTo,
} from '#app/state/shown-face.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import { facesOf } from '#app/worker/plan-faces.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

async function lidPage(): Promise<PlannedPage> {
  const { planFile } = await runLid({ requirements }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  const faces = facesOf(planFile);
  return { plan: faces.near, faces } as PlannedPage;
}
const shown = (page: PlannedPage | undefined) => ({ derived: { page } }) as Pick<WorkbenchState, 'derived'>;

test('turned over and back: the same page of the near face', async () => {
  const page = await lidPage();
  expect([faceOnShow(shown(page)), hasFarFace(shown(page))]).toEqual(['near', true]);
  const over = onFace(page, 'far');
  expect(faceOnShow(shown(over))).toBe('far');
  expect(onFace(over, 'near').plan).toBe(page.plan);
  expect(onFace(page, 'near')).toBe(page);
});

test('a part of one face has no other to turn to', async () => {
  const { faces } = await lidPage();
  if (faces === undefined) throw new Error('the page has faces');
  const page = { plan: faces.near, faces: { near: faces.near, far: undefined } } as PlannedPage;
  expect(onFace(page, 'far')).toBe(page);
  expect([faceOnShow(shown(page)), hasFarFace(shown(page))]).toEqual(['near', false]);
  expect(otherFace(page)).toEqual({ floors: [], layers: new Set() });
  expect(isBehindEtched(shown(page))).toBe(false);
  expect(hasFarFace(shown(undefined))).toBe(false);
});

test('what shows through: floors of the other face, and the layers that draw them alone', async () => {
  const page = await lidPage();
  const near = otherFace(page);
  expect([near.floors.length, [...near.layers]]).toEqual([1, ['BACK']]);
  const far = otherFace(onFace(page, 'far'));
  expect([far.floors.length, [...far.layers].sort()]).toEqual([2, ['POCKETS', 'ROUND']]);
});

test('what a depth leaves is less where the other face is etched, whichever is on show', async () => {
  const page = await lidPage();
  expect([isBehindEtched(shown(page)), isBehindEtched(shown(onFace(page, 'far')))]).toEqual([true, true]);
  const bare = page.faces?.far && {
    ...page.faces.far,
    regions: page.faces.far.regions.filter(({ level }) => level === 0),
  };
  const near = { ...page, faces: { near: page.faces?.near, far: bare } } as PlannedPage;
  expect([isBehindEtched(shown(near)), isBehindEtched(shown(onFace(near, 'far')))]).toEqual([false, true]);
});

test('regions of the other face show through also before anything is asked of them, the land round them never', async () => {
  const page = await lidPage();
  const bare = (plan: ShownPlan | undefined) =>
    plan && { ...plan, regions: plan.regions.map((region) => ({ ...region, level: 0 })) };
  const near = bare(page.faces?.near);
  const unasked = { ...page, plan: near, faces: { near, far: bare(page.faces?.far) } } as PlannedPage;
  expect([otherFace(unasked).floors.length, [...otherFace(unasked).layers]]).toEqual([1, ['BACK']]);
  expect([...otherFace(onFace(unasked, 'far')).layers].sort()).toEqual(['POCKETS', 'ROUND']);
});

test('the relief is seen from below with the far face, and from above again after it', () => {
  expect(turnedTo('far', { reliefView: 'cut' })).toEqual({ face: 'far', reliefView: 'below' });
  expect(turnedTo('near', { reliefView: 'below' })).toEqual({ face: 'near', reliefView: 'drawn' });
  expect(turnedTo('near', { reliefView: 'cut' })).toEqual({ face: 'near', reliefView: 'cut' });
});
