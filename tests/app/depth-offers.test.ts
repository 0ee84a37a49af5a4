import { describe, expect, it } from 'vitest';
import { depthOffers, takeOffers, unreadFigures } from '#app/state/edits/depth-offers.ts';
import type { RegionTarget } from '#app/state/edits/region-target.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { troubleOf } from '#app/views/drawing/trouble-of.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { finding } from '#findings/finding.ts';
import type { JobFile } from '#job/job-file.ts';
import { rectangle } from '#support/geometry/shapes.ts';

/** Pockets in a row, 10 wide; depths that are asked of them now. */
const asked = [0, 1.2, 2.2];
const shapes = asked.map((depth, index) => {
  const x = index * 20;
  return {
    region: { id: `R0${index + 1}`, asked: { depth, plus: 0.1, minus: 0.1 } },
    loops: [rectangle(x, 0, x + 10, 10)],
    box: { minX: x, minY: 0, maxX: x + 10, maxY: 10 },
  } as unknown as RegionShape;
});
const page = {
  plan: { drawing: { unit: 'mm' } },
  notes: ['t 1.8', '1.4', '2.2'].map((text, index) => ({
    text,
    layer: '0',
    at: { x: index * 20 + 4, y: 4 },
  })),
} as unknown as PlannedPage;

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  stock: { thickness: 4 },
  process: { etchFactor: 1, rate: 0.03 },
  requirements: [],
};
const target = (index: number): RegionTarget => ({
  layer: 'POCKETS',
  face: 'near',
  at: [index * 20 + 5, 5],
  holds: ([x]) => x >= index * 20 && x < index * 20 + 10,
});

describe('depth notes in the workbench', () => {
  const offers = depthOffers({ page, shapes, prefix: '', thickness: 4 });

  it('compare with what is required now: nothing yet, another depth, exactly this', () => {
    expect(offers.map(({ region, standing }) => [region, standing])).toEqual([
      ['R01', 'open'],
      ['R02', 'other'],
      ['R03', 'asked'],
    ]);
  });

  it('that are not understood are named where nothing is required; those on the land round the pockets are not', () => {
    const land = { region: { id: 'R04', asked: { depth: 0 } }, loops: [rectangle(-5, -9, 63, 19)] };
    const round = { ...land, box: { minX: -5, minY: -9, maxX: 63, maxY: 19 } } as unknown as RegionShape;
    const places = [4, 24, 15].map((x) => ({ text: 'TAPER 1.8 TO 1.1', layer: '0', at: { x, y: 3 } }));
    const noted = { ...page, notes: places } as unknown as PlannedPage;
    expect(unreadFigures({ page: noted, shapes: [...shapes, round], prefix: '', thickness: 4 })).toEqual([
      { region: 'R01', text: 'TAPER 1.8 TO 1.1' },
    ]);
  });

  it('when accepted, are required of their regions as written', () => {
    const targets = new Map([0, 1, 2].map((index) => [`R0${index + 1}`, target(index)]));
    expect(takeOffers(job, offers.slice(0, 2), targets).requirements).toEqual([
      { at: [5, 5], thickness: 1.8 },
      { at: [25, 5], depth: 1.4 },
    ]);
    const same = offers.map((offer) => ({ ...offer, asks: 'depth' as const, length: 2 }));
    expect(takeOffers(job, same, targets).requirements).toEqual([{ layer: 'POCKETS', depth: 2 }]);
  });
});

describe('trouble in the drawing', () => {
  it('is reported by kind, without what the plan or the job is to blame for', () => {
    const gap = (x: number) =>
      finding('gap-joined', { gap: 0.02, joinTolerance: 0.05 }, { at: { x, y: 0 }, layer: 'TRIM', line: 9 });
    const kinds = troubleOf([
      gap(1),
      finding('drawing-unit-missing', {}),
      gap(2),
      finding('alloy-unknown', { name: 'x', meant: undefined, known: [] }, { path: 'stock.alloy', line: 4 }),
    ]);
    expect(kinds.map((each) => [each[0].code, each.length])).toEqual([
      ['gap-joined', 2],
      ['drawing-unit-missing', 1],
    ]);
  });
});
