/** Where edges come out at another factor (M8.4), and the depths that hold them best, by hand: φ = 1 as planned, so ℓ beside land has its line ℓ from the edge. */
import { describe, expect, test } from 'vitest';
import { edgesAtFactor, forecastAtFactor } from '#run/rework/edges-at-factor.ts';
import { readReworkPlan } from '#run/rework/rework-plan.ts';
import { runJob } from '#run/run-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

/** The buoy's lid, 1.2 mm and 2.4 in it; what floors and edges may be off is given. */
async function planText(of: object, more: object = {}): Promise<string> {
  const requirements = buoyLidJob.requirements.map((each) => ({ ...each, ...of }));
  const { files } = await runJob({
    jobText: JSON.stringify({ ...buoyLidJob, requirements, ...more }),
    drawingName: 'lid.dxf',
    drawingBytes: bytesOf(buoyLidDrawing),
  });
  return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
}
async function planned(of: object, more: object = {}) {
  const plan = readReworkPlan(await planText(of, more));
  if ('refused' in plan) throw new Error('the plan reads back');
  return plan;
}
const FLOORS = { plus: 0.2, minus: 0.3 };

describe('a plan read for rework', () => {
  test('has its floors with what is to be left of them, and the room of each level', async () => {
    const { floors, rooms, lines } = await planned(FLOORS);
    expect(lines.levels).toEqual([2.4, 1.2]);
    expect(floors.map(({ level, thickness, plus, minus }) => [level, thickness, plus, minus])).toEqual([
      [1.2, expect.closeTo(2.8, 9), 0.2, 0.3],
      [2.4, expect.closeTo(1.6, 9), 0.2, 0.3],
      [1.2, expect.closeTo(2.8, 9), 0.2, 0.3],
    ]);
    expect(rooms).toEqual([
      { level: 2.4, least: expect.closeTo(2.1, 9), most: expect.closeTo(2.6, 9) },
      { level: 1.2, least: expect.closeTo(0.9, 9), most: expect.closeTo(1.4, 9) },
    ]);
  });

  test('a level that serves two regions has the room that both leave', async () => {
    const [pocket, deep, round] = buoyLidJob.requirements;
    const requirements = [
      { ...pocket, plus: 0.2, minus: 0.05 },
      { ...deep, ...FLOORS },
      { ...round, plus: 0.07, minus: 0.3 },
    ];
    const { rooms } = await planned({}, { requirements });
    expect(rooms[1]).toEqual({ level: 1.2, least: expect.closeTo(1.15, 9), most: expect.closeTo(1.27, 9) });
  });

  test('of a sheet that tapers what is left is that of the place', async () => {
    // From 5 mm at x = 0 to 4 at x = 200: at a region’s label 5 − x / 200, less its depth.
    const thickness = { from: [0, 0], to: [200, 0], thicknessFrom: 5, thicknessTo: 4 };
    const { floors } = await planned(FLOORS, { stock: { alloy: 'al-2024-t3', thickness } });
    for (const { label, level, thickness: left } of floors) {
      expect(left).toBeCloseTo(5 - label[0] / 200 - level, 6);
    }
  });

  test('in the order of the run, deepest first whichever stage comes first', async () => {
    const process = { ...buoyLidJob.process, masking: 're-mask' };
    const { lines, rooms } = await planned(FLOORS, { process });
    expect([lines.levels, rooms.map(({ level }) => level)]).toEqual([
      [2.4, 1.2],
      [2.4, 1.2],
    ]);
  });

  test('plan-file-unusable: a plan without a factor', async () => {
    const file = JSON.parse(await planText(FLOORS));
    file.job.process = {};
    const read = readReworkPlan(JSON.stringify(file));
    expect('refused' in read && read.refused).toMatchObject({
      code: 'plan-file-unusable',
      facts: { path: 'job' },
    });
  });
});

describe('edges at φ = 1.1 in place of 1', () => {
  test('come out 0.1 √(ℓ² − d²) farther; where nothing is asked of them their depths go as far the other way as they may', async () => {
    const plan = await planned(FLOORS);
    const { edges, levels } = forecastAtFactor(plan, 1.1);
    for (const { level, beside, off, allowed, best } of edges) {
      expect(off).toBeCloseTo(0.1 * Math.sqrt(level ** 2 - beside ** 2), 6);
      expect(allowed).toBeUndefined();
      expect(Math.abs(best)).toBeLessThan(Math.abs(off));
    }
    // Less deep by some: ℓ beside land comes out at 1.1 ℓ′ − ℓ, so that 1.2 wants 1.09.
    const [deep = 0, shallow = 0] = levels;
    expect([shallow > 1, shallow < 1.2, deep > 2.1, deep < 2.4]).toEqual([true, true, true, true]);
  });

  test('with + 0.02 − 0.09 asked of each, the worst of them passes by as little as the floors let it', async () => {
    const plan = await planned({ ...FLOORS, edge: { plus: 0.02, minus: 0.09 } });
    const { edges, levels } = forecastAtFactor(plan, 1.1);
    const passed = (which: 'off' | 'best') =>
      Math.max(...edges.map((edge) => Math.max(edge[which] - 0.02, -edge[which] - 0.09)));
    expect(edges.map(({ allowed }) => allowed)).toEqual(edges.map(() => ({ plus: 0.02, minus: 0.09 })));
    expect(passed('off')).toBeGreaterThan(0.08);
    expect(passed('best')).toBeLessThan(0);
    for (const [index, { least, most }] of plan.rooms.entries()) {
      expect(levels[index]).toBeGreaterThanOrEqual(least - 1e-9);
      expect(levels[index]).toBeLessThanOrEqual(most + 1e-9);
    }
  });

  test('other depths come with their minutes, and with how much of their floors’ room they take', async () => {
    const plan = await planned({ ...FLOORS, edge: { plus: 0.02, minus: 0.09 } });
    const { levels, minutes, roomTaken } = forecastAtFactor(plan, 1.1);
    const [deep = 0, shallow = 0] = levels;
    const { rate } = plan.process;
    expect(minutes.map(({ planned: before }) => before)).toEqual([
      expect.closeTo(1.2 / rate, 9),
      expect.closeTo(1.2 / rate, 9),
    ]);
    // Peeled one after the other: the deeper floor is etched on while the shallower one is.
    expect(minutes.map(({ instead }) => instead * rate)).toEqual([
      expect.closeTo(deep - shallow, 9),
      expect.closeTo(shallow, 9),
    ]);
    // Either may be 0.3 less deep; more than a third of it is needed to bring 0.1 · 1.2 back to 0.02.
    expect(roomTaken).toBeCloseTo(Math.max(2.4 - deep, 1.2 - shallow) / 0.3, 9);
    expect(roomTaken).toBeGreaterThan(0.3);
    expect(roomTaken).toBeLessThanOrEqual(1);
  });

  test('levels keep their order however much room they have', async () => {
    const plan = await planned(FLOORS);
    const rooms = plan.rooms.map(({ level }) => ({ level, least: 0.2, most: 3 }));
    for (const factor of [0.6, 0.8, 1.3, 1.9]) {
      const [deep = 0, shallow = 0] = edgesAtFactor(plan.planFile.lineBudgets ?? [], plan.lines, {
        etchFactor: [[0, factor]],
        rooms,
      }).levels;
      expect(deep).toBeGreaterThan(shallow);
      expect(shallow).toBeGreaterThan(0);
    }
  });

  test('a level without room stays where it is, and so does every one at the plan’s own factor', async () => {
    const plan = await planned(FLOORS);
    const budgets = plan.planFile.lineBudgets ?? [];
    expect(edgesAtFactor(budgets, plan.lines, { etchFactor: [[0, 1.1]], rooms: [] }).levels).toEqual([
      2.4, 1.2,
    ]);
    const own = edgesAtFactor(budgets, plan.lines, { etchFactor: [[0, 1]], rooms: plan.rooms });
    expect(own.levels).toEqual([2.4, 1.2]);
    expect(own.edges.map(({ off, best }) => [off, best])).toEqual(
      own.edges.map(() => [expect.closeTo(0, 6), expect.closeTo(0, 6)]),
    );
  });

  test('a plan without edges has nothing to forecast', async () => {
    const { lineBudgets: _, ...file } = JSON.parse(await planText(FLOORS));
    const plan = readReworkPlan(JSON.stringify(file));
    if ('refused' in plan) throw new Error('the plan reads back');
    const { rate } = plan.process;
    expect(forecastAtFactor(plan, 1.1)).toEqual({
      edges: [],
      levels: [2.4, 1.2],
      minutes: [1, 2].map(() => ({
        planned: expect.closeTo(1.2 / rate, 9),
        instead: expect.closeTo(1.2 / rate, 9),
      })),
      roomTaken: 0,
    });
  });
});
