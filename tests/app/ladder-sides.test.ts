/** The ladder of a part that is etched on both faces: levels from either surface, bands, and rows that never overlap. */
import { expect, test } from 'vitest';
import { barBetween, ladderRows, type RowsAsk, rowHeight } from '#app/views/ladder/ladder-rows.ts';
import { belowNear, isShared, type LadderSide, ladderSides } from '#app/views/ladder/ladder-sides.ts';
import { facesOf, type PlanFaces } from '#app/worker/plan-faces.ts';
import { itemAt } from '#geometry/assert.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

const THICKNESS = 4;

async function lidFaces(job: object = {}): Promise<PlanFaces> {
  const { planFile } = await runLid({ requirements, ...job }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  return facesOf(planFile);
}

/** 1.2 and 0.7 on the near face, 1.2 alone on the far one. */
async function lidSides(shown: 'near' | 'far'): Promise<readonly LadderSide[]> {
  const faces = await lidFaces();
  return ladderSides(faces[shown], faces);
}

const levelsOf = ({ levels }: LadderSide) => levels.map(({ stage }) => stage.level);

test('each face has the levels that its own regions end on, and every stage that etches its deepest floor', async () => {
  const [near, far] = await lidSides('near');
  if (near === undefined || far === undefined) throw new Error('the lid has two faces');
  expect([near.isOnShow, far.isOnShow]).toEqual([true, false]);
  expect([levelsOf(near), levelsOf(far)]).toEqual([[1.2, 0.7], [1.2]]);
  // The far pocket is in the bath while 0.7 is taken of the near one.
  const bands = far.bands.map(({ stage, from, to }) => [stage.number, from, to]);
  expect(bands).toEqual([
    [1, 0.7, 1.2],
    [2, 0, 0.7],
  ]);
  const turned = await lidSides('far');
  expect(turned.map(({ isOnShow }) => isOnShow)).toEqual([false, true]);
});

test('a level of both faces is accepted where the regions of both accept it', async () => {
  const faces = await lidFaces({
    requirements: requirements.map((each, index) => ({
      ...each,
      plus: index === 2 ? 0.03 : 0.08,
      minus: 0.05,
    })),
  });
  for (const shown of ['near', 'far'] as const) {
    const side = ladderSides(faces[shown], faces).find(({ isOnShow }) => isOnShow);
    const deepest = side?.levels[0]?.accepted;
    expect([deepest?.from, deepest?.to]).toEqual([expect.closeTo(1.15, 9), expect.closeTo(1.23, 9)]);
  }
});

test('what is cut through leaves no floor and takes no room of the bar', async () => {
  const faces = await lidFaces();
  const cuts = faces.near.regions
    .filter(({ layer }) => layer === 'POCKETS')
    .map(({ id }) => ({ id, cusp: 0.4, depth: 2 }));
  const [near] = ladderSides(faces.near, { ...faces, between: { least: 2.1, cuts } });
  expect(near?.levels.map(({ isCut }) => isCut)).toEqual([true, false]);
  expect([near?.deepest, near?.bands.length]).toEqual([0.7, 1]);
});

test('a part of one face: one side with all stages, counted from its surface', async () => {
  const faces = await lidFaces();
  const sides = ladderSides(faces.near, { near: faces.near, far: undefined });
  expect(sides.map(({ face, isOnShow }) => [face, isOnShow])).toEqual([['near', true]]);
  expect(levelsOf(itemAt(sides, 0))).toEqual([1.2, 0.7]);
  expect(ladderSides(undefined, undefined)).toMatchObject([{ levels: [], bands: [], deepest: 0 }]);
});

test('depths of the far face count from below', () => {
  expect([belowNear('near', 1.3, 3), belowNear('far', 1.3, 3)]).toEqual([1.3, 1.7]);
});

test('floors that would run into each other share the bar', async () => {
  const sides = await lidSides('near');
  expect([isShared(sides, THICKNESS), isShared(sides, 2.4), isShared(sides.slice(0, 1), 1)]).toEqual([
    false,
    true,
    false,
  ]);
});

const rowsAsk = async (shown: 'near' | 'far', height: number): Promise<RowsAsk> => ({
  sides: await lidSides(shown),
  unused: [0.72],
  least: 2.1,
  thickness: THICKNESS,
  yOf: (depth) => 8 + (depth * (height - 42)) / THICKNESS,
  height,
});

test.each(['near', 'far'] as const)(
  'figures keep the order of their depths and never overlap: %s face',
  async (shown) => {
    for (const height of [620, 300, 140]) {
      const ask = await rowsAsk(shown, height);
      const rows = ladderRows(ask);
      const onShow = rows.filter(({ kind }) => kind === 'level');
      expect(onShow.map(({ key }) => key.split(' ')[0])).toEqual(
        shown === 'near' ? ['near', 'near'] : ['far'],
      );
      expect(rows.filter(({ kind }) => kind === 'between').length).toBe(
        barBetween(ask) === undefined ? 1 : 0,
      );
      for (const [index, row] of rows.slice(1).entries()) {
        const above = itemAt(rows, index);
        const apart = (rowHeight(above.kind) + rowHeight(row.kind)) / 2;
        expect(row.from).toBeGreaterThanOrEqual(above.from);
        expect(row.to - above.to).toBeGreaterThanOrEqual(apart - 1e-9);
      }
    }
  },
);
