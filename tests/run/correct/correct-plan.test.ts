/** What a run is corrected by, read from its plan: land, floors, stages and the front that they make. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readRunPlan } from '#run/correct-plan.ts';
import { floorBehind } from '#run/run-face.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

async function planOf(job: object): Promise<string> {
  const { files } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
  return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
}
function readOf(text: string) {
  const read = readRunPlan(text);
  if ('refused' in read) throw new Error(JSON.stringify(read.refused));
  return read;
}

let plan = '';
beforeAll(async () => {
  plan = await planOf(buoyLidJob);
});
const changed = (change: (file: { stages: object[]; job: object; budgets?: unknown }) => void) => {
  const file = JSON.parse(plan);
  change(file);
  return JSON.stringify(file);
};

describe('the plan of the buoy’s lid', () => {
  test('its regions stand where they were drawn; beside the part there is none', () => {
    const { near, plan: run, origin } = readOf(plan);
    const levelAt = (x: number, y: number) => {
      const id = near.regionAt({ x: x - origin.x, y: y - origin.y })?.id;
      return run.regions.find((each) => each.id === id)?.level;
    };
    expect([levelAt(10, 60), levelAt(30, 60), levelAt(70, 60), levelAt(170, 70), levelAt(230, 60)]).toEqual([
      0,
      1.2,
      2.4,
      1.2,
      undefined,
    ]);
  });

  test('the front is in the frame of its origin, whole millimetres beside the first border', () => {
    const {
      origin,
      near: { front },
    } = readOf(plan);
    expect([origin.x, origin.y]).toEqual([Math.round(origin.x), Math.round(origin.y)]);
    // Stage 1 opens DEEP alone, from (45, 40) to (95, 80), narrower by the undercut of its 1.2 mm and more.
    const [first] = front.stages;
    const xs = first?.opening.flat().map(({ start }) => start.x + origin.x) ?? [];
    expect(Math.min(...xs)).toBeGreaterThan(45);
    expect(Math.max(...xs)).toBeLessThan(95);
    expect(front.stages.map(({ level, base }) => [level, base])).toEqual([
      [2.4, 0],
      [1.2, 0],
    ]);
    expect(front.thickness).toBe(4);
  });

  test('masked again for each stage begins where the one before it ended; the front has the deepest first', async () => {
    const process = { ...buoyLidJob.process, masking: 're-mask' };
    const {
      near: { front },
      plan: run,
    } = readOf(await planOf({ ...buoyLidJob, process }));
    expect(run.stages.map(({ number, level }) => [number, level])).toEqual([
      [1, 1.2],
      [2, 2.4],
    ]);
    expect(front.stages.map(({ level, base }) => [level, base])).toEqual([
      [2.4, 1.2],
      [1.2, 0],
    ]);
  });

  test('a region is asked as a thickness where its budget says so', async () => {
    const requirements = [
      { layer: 'POCKETS', depth: 1.2 },
      { layer: 'DEEP', thickness: 1.6 },
      { layer: 'ROUND', depth: 1.2 },
    ];
    const { plan: run } = readOf(await planOf({ ...buoyLidJob, requirements }));
    expect(run.regions.map(({ level, asThickness }) => [level, asThickness])).toEqual(
      run.regions.map(({ level }) => [level, level === 2.4]),
    );
    const without = changed((file) => {
      delete file.budgets;
    });
    expect(readOf(without).plan.regions.some(({ asThickness }) => asThickness)).toBe(false);
  });

  test('a job that names no unit is in millimetres', () => {
    const { units: _, ...job } = JSON.parse(plan).job;
    const text = changed((file) => {
      file.job = job;
    });
    expect(readOf(text).jobUnit).toBe('mm');
    expect(readOf(text).drawingUnit).toBe(1);
  });

  test('a sheet that tapers has no thickness of its own, and is without end for the front', () => {
    const thickness = { from: [0, 0], to: [100, 0], thicknessFrom: 5, thicknessTo: 4 };
    const text = changed((file) => {
      file.job = { ...file.job, stock: { alloy: 'al-2024-t3', thickness } };
    });
    const { plan: run, near } = readOf(text);
    expect([run.sheet, near.front.thickness]).toEqual([undefined, Number.POSITIVE_INFINITY]);
  });

  test('plan-file-unusable: a stage that etches nothing, or takes no time', () => {
    for (const [stage, spoilt] of [
      [0, { level: 0 }],
      [1, { minutes: 0 }],
    ] as const) {
      const read = readRunPlan(
        changed((file) => {
          file.stages[stage] = { ...file.stages[stage], ...spoilt };
        }),
      );
      expect('refused' in read && read.refused).toMatchObject({
        code: 'plan-file-unusable',
        facts: { path: `stages[${stage}]` },
      });
    }
  });
});

describe('a plan of both faces', () => {
  const bothFaces = async () => {
    const { files } = await runLid({ requirements }, LID);
    return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
  };

  test('each face has its own regions at a place, and what lies behind a label is known by its floor', async () => {
    const { plan: run, near, far, origin } = readOf(await bothFaces());
    const at = (x: number, y: number) => ({ x: x - origin.x, y: y - origin.y });
    const levelsAt = (x: number, y: number) => [near, far].map((face) => face?.regionAt(at(x, y))?.level);
    expect(levelsAt(150, 62)).toEqual([0.7, 1.2]);
    expect(levelsAt(55, 60)).toEqual([1.2, 0]);
    expect(levelsAt(110, 25)).toEqual([0, 1.2]);
    const behindOf = (id: string) => run.regions.find((each) => each.id === id)?.behind;
    const [round, back] = [near.regionAt(at(150, 62))?.id ?? '', far?.regionAt(at(150, 62))?.id ?? ''];
    expect([behindOf(round), behindOf(back)]).toEqual([{ floor: back }, { floor: round }]);
    expect(behindOf(near.regionAt(at(55, 60))?.id ?? '')).toBeUndefined();
  });

  test('a wall behind a place is no floor, and one face has nothing behind it', async () => {
    const { near, far, origin } = readOf(await bothFaces());
    const at = (x: number, y: number) => ({ x: x - origin.x, y: y - origin.y });
    if (far === undefined) throw new Error('the plan has a far face');
    // The far pocket's wall stands at x = 105, and its line 1.2 mm or more inside.
    expect(floorBehind(far, at(105.4, 60))).toBe('wall');
    expect(floorBehind(far, at(103, 60))).toBeUndefined();
    expect(floorBehind(near, at(150, 62))).toEqual({ floor: near.regionAt(at(150, 62))?.id });
    expect(readOf(plan).far).toBeUndefined();
  });
});
