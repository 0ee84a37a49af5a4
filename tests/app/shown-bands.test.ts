/** Bands along drawn edges: of the face on show alone, all or the picked one, as wide as plan.json says, with what is allowed. */
import { expect, test } from 'vitest';
import { budgetsOnShow, shownBands } from '#app/state/shown-bands.ts';
import { packContours } from '#app/worker/pack-contours.ts';
import { facesOf } from '#app/worker/plan-faces.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

async function pageOfLid(job: object = {}) {
  const { planFile, lineBudgets = [] } = await runLid({ requirements, ...job }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  const faces = facesOf(planFile);
  const drawn = lineBudgets.map(({ at }) => ({ lines: packContours([]), at }));
  const results = { lineBudgets: planFile.lineBudgets } as PlannedPage['results'];
  const pageOf = (plan: typeof faces.near) => ({ plan, faces, results }) as PlannedPage;
  return { faces, drawn, budgets: planFile.lineBudgets ?? [], pageOf };
}

test('edges of either face are listed with that face, each with its place among all', async () => {
  const { faces, budgets, pageOf } = await pageOfLid();
  const near = budgetsOnShow(pageOf(faces.near));
  const far = budgetsOnShow(pageOf(faces.far ?? faces.near));
  expect(near.map(({ budget }) => budget.regions)).toEqual([['R02'], ['R01']]);
  expect(far.map(({ budget }) => budget.regions)).toEqual([['F02']]);
  expect([...near, ...far].map(({ index }) => index)).toEqual([0, 1, 2]);
  for (const { index, budget } of far) expect(budget).toBe(budgets[index]);
});

test('a band is as wide as is likely, in the colour of the stage that makes the edge', async () => {
  const { faces, drawn, budgets, pageOf } = await pageOfLid();
  const plan = faces.near;
  const seen = { page: pageOf(plan), edges: { drawn, of: plan } };
  const bands = shownBands(seen, { showsBands: true, edge: undefined });
  expect(bands.map(({ index, half }) => [index, half])).toEqual([
    [0, budgets[0]?.byClock.outward.likely],
    [1, budgets[1]?.byClock.outward.likely],
  ]);
  expect(bands.map(({ color }) => color)).toEqual(plan.stages.map(({ color }) => color));
  expect(bands[0]?.half).toBeGreaterThan(bands[1]?.half ?? 0);
});

test('none is shown before someone asks, of another plan, or but the one picked', async () => {
  const { faces, drawn, pageOf } = await pageOfLid();
  const page = pageOf(faces.near);
  const here = { page, edges: { drawn, of: faces.near } };
  expect(shownBands(here, { showsBands: false, edge: undefined })).toEqual([]);
  expect(shownBands({ page, edges: undefined }, { showsBands: true, edge: 1 })).toEqual([]);
  const other = { page, edges: { drawn, of: { ...faces.near } } };
  expect(shownBands(other, { showsBands: true, edge: 1 })).toEqual([]);
  expect(shownBands(here, { showsBands: false, edge: 1 }).map(({ index }) => index)).toEqual([1]);
});

test('what is allowed goes with the picked edge, where it is the same to either side', async () => {
  const { faces, drawn, pageOf } = await pageOfLid({ rules: { lineTolerance: 0.37 } });
  const seen = { page: pageOf(faces.near), edges: { drawn, of: faces.near } };
  const bands = shownBands(seen, { showsBands: true, edge: 0 });
  expect(bands.map(({ isPicked, allowed }) => [isPicked, allowed])).toEqual([
    [true, 0.37],
    [false, undefined],
  ]);
  const edge = { plus: 0.37, minus: 0.21 };
  const uneven = await pageOfLid({ requirements: requirements.map((each) => ({ ...each, edge })) });
  const other = { page: uneven.pageOf(uneven.faces.near), edges: { drawn, of: uneven.faces.near } };
  expect(shownBands(other, { showsBands: true, edge: 0 })[0]?.allowed).toBeUndefined();
});
