import { describe, expect, it } from 'vitest';
import { answerCircles } from '#app/state/edits/answer-circles.ts';
import type { RegionTarget } from '#app/state/edits/region-target.ts';
import { circlesInside } from '#app/state/opening/circles-inside.ts';
import { type RegionShape, regionShapes } from '#app/state/region-shape.ts';
import type { Contour, ShownRegion } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';

function box(x: number, y: number, toX: number, toY: number): Contour {
  return {
    closed: true,
    vertices: [
      [x, y, 0],
      [toX, y, 0],
      [toX, toY, 0],
      [x, toY, 0],
    ],
  };
}

/** Two half circles. */
function circle(x: number, y: number, radius: number): Contour {
  return {
    closed: true,
    vertices: [
      [x + radius, y, 1],
      [x - radius, y, 1],
    ],
  };
}

function region(id: string, layer: string, contours: Contour[], depth = 0): ShownRegion {
  return { id, layer, contours, asked: { depth, plus: 0.1, minus: 0.1 } } as unknown as ShownRegion;
}

const drill = [circle(30, 28, 2.4), circle(44, 31, 3.1)] as const;
const pad = circle(110, 40, 9);
const round = circle(150, 80, 14);
const sump = circle(60, 60, 11);
/** A skin with two bays; drilled holes and a round sump in the first, a pad in the second, and a round pocket and a hole in the land. */
const shapes: RegionShape[] = regionShapes(
  [
    region('R01', 'TRIM', [box(0, 0, 180, 100), box(12, 10, 80, 90), box(90, 10, 135, 90), round]),
    region('R02', 'BAYS', [box(12, 10, 80, 90), ...drill, sump]),
    region('R03', 'BAYS', [box(90, 10, 135, 90), pad]),
    region('R04', 'DRILL HOLES', [drill[0]]),
    region('R05', 'DRILL HOLES', [drill[1]]),
    region('R06', 'PADS', [pad]),
    region('R07', 'ROUND', [round]),
    region('R08', 'BAYS', [sump]),
    region('R09', 'DRILL HOLES', [circle(160, 12, 2.4)]),
  ],
  [],
);
const layers = ['TRIM', 'BAYS', 'BAYS', 'BAYS', 'DRILL HOLES', 'DRILL HOLES', 'DRILL HOLES', 'PADS', 'ROUND'];
const find = (figured: readonly string[] = [], of = shapes) =>
  circlesInside({ shapes: of, layers, figured: new Set(figured) });

describe('circles inside regions', () => {
  it('are asked about layer by layer, and chosen where the layer says what they are', () => {
    expect(find()).toEqual([
      {
        layer: 'DRILL HOLES',
        circles: ['R04', 'R05', 'R09'],
        within: ['R02'],
        least: expect.closeTo(4.8, 9),
        most: expect.closeTo(6.2, 9),
        said: 'holes',
        isWholeLayer: true,
      },
      expect.objectContaining({ layer: 'PADS', circles: ['R06'], within: ['R03'], said: 'bosses' }),
      expect.objectContaining({ layer: 'BAYS', circles: ['R08'], said: undefined, isWholeLayer: false }),
    ]);
  });

  it('are none where a figure says that they are etched, or a depth is asked already', () => {
    expect(find(['R08', 'R06']).map(({ layer }) => layer)).toEqual(['DRILL HOLES']);
    const asked = regionShapes(
      shapes.map(({ region: each }) => (each.id === 'R08' ? region('R08', 'BAYS', [sump], 1.3) : each)),
      [],
    );
    expect(find([], asked).map(({ layer }) => layer)).toEqual(['DRILL HOLES', 'PADS']);
  });

  it('are none in a part without bays: a round pocket in the land is a pocket', () => {
    expect(find().flatMap(({ circles }) => circles)).not.toContain('R07');
    expect(circlesInside({ shapes: [], layers, figured: new Set() })).toEqual([]);
  });

  it('are whole: a half round, and one with something in it, are no circles', () => {
    const half: Contour = {
      closed: true,
      vertices: [
        [40, 40, 1],
        [30, 40, 0],
      ],
    };
    const ring = [circle(50, 50, 9), circle(50, 50, 4)];
    const odd = regionShapes(
      [
        region('R01', 'TRIM', [box(0, 0, 180, 100), box(12, 10, 80, 90)]),
        region('R02', 'BAYS', [box(12, 10, 80, 90), half, circle(50, 50, 9)]),
        region('R03', 'BAYS', [half]),
        region('R04', 'BAYS', ring),
      ],
      [],
    );
    expect(find([], odd)).toEqual([]);
  });
});

describe('what they are answered to be', () => {
  const job: JobFile = {
    format: 'isobath-job',
    version: 1,
    drawing: 'skin.dxf',
    layers: { outline: ['TRIM'], ignore: ['NOTES'] },
    stock: { thickness: 3.2 },
    process: {},
    requirements: [],
  };
  const targets = new Map(
    ['R04', 'R05', 'R09', 'R06', 'R08'].map((id, index): [string, RegionTarget] => [
      id,
      { layer: '', face: 'near', at: [10 * index + 3, 7], holds: () => false },
    ]),
  );
  const [drilled, pads, sumps] = find();
  const answer = (group: typeof drilled, meaning: 'holes' | 'bosses' | 'etched', of = job) =>
    group === undefined ? undefined : answerCircles(of, [{ group, meaning }], targets).layers;

  it('holes are named by their layer, or by points where it draws more or the border has none', () => {
    expect(answer(drilled, 'holes')).toEqual({ outline: ['TRIM', 'DRILL HOLES'], ignore: ['NOTES'] });
    expect(answer(sumps, 'holes')).toEqual({ outline: ['TRIM'], ignore: ['NOTES'], holes: [[43, 7]] });
    const outermost: JobFile = { ...job, layers: { outline: 'outermost' } };
    expect(answer(drilled, 'holes', outermost)).toEqual({
      outline: 'outermost',
      holes: [
        [3, 7],
        [13, 7],
        [23, 7],
      ],
    });
  });

  it('bosses stay as they are; etched ones on a layer of their own are left out', () => {
    expect(answer(pads, 'bosses')).toEqual(job.layers);
    expect(answer(pads, 'etched')).toEqual({ outline: ['TRIM'], ignore: ['NOTES', 'PADS'] });
    expect(answer(sumps, 'etched')).toEqual(job.layers);
  });
});
