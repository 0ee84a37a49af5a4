import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan, loopsArea, reverseSpans } from '#geometry/span.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { askRegions } from '#part/ask-regions.ts';
import type { Part, Region } from '#part/part.ts';

function rectangle(x: number, y: number, width: number, height: number): Loop {
  const corners: Point[] = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return corners.map((corner, index) => lineSpan(corner, corners[(index + 1) % 4] ?? corner));
}

function region(id: string, layer: string, label: Point, loops: readonly Loop[]): Region {
  return { id, face: 0, layer, layers: layer === '' ? [] : [layer], label, area: loopsArea(loops), loops };
}

/**
 * A hatch panel 200 × 100: two bays side by side that share the line x = 100, the left one with a deeper pocket in it, and
 * the rim of the panel around them.
 */
const PANEL: Part = {
  arrangement: { vertices: [], edges: [], faces: [] },
  regions: [
    region('R01', 'TRIM', { x: 5, y: 50 }, [
      rectangle(0, 0, 200, 100),
      reverseSpans(rectangle(10, 10, 180, 80)),
    ]),
    region('R02', 'BAYS', { x: 20, y: 20 }, [
      rectangle(10, 10, 90, 80),
      reverseSpans(rectangle(30, 30, 40, 40)),
    ]),
    region('R03', 'BAYS', { x: 150, y: 50 }, [rectangle(100, 10, 90, 80)]),
    region('R04', 'POCKETS', { x: 50, y: 50 }, [rectangle(30, 30, 40, 40)]),
  ],
  regionOfFace: [],
  sheet: [rectangle(0, 0, 200, 100)],
  trouble: [],
};

function ask(requirements: JobFile['requirements'], unit: 'mm' | 'in' = 'mm', part = PANEL) {
  const { job } = resolveJob(
    {
      format: 'isobath-job',
      version: 1,
      drawing: 'hatch.dxf',
      stock: { thickness: 4, minus: 0.05, plus: 0.05 },
      process: { etchFactor: 1, rate: 0.03 },
      requirements,
    },
    unit,
  );
  if (job === undefined) throw new Error('the job must resolve');
  const { asked, findings } = askRegions(part, job);
  return {
    depths: Object.fromEntries([...asked].map(([id, { depth }]) => [id, depth])),
    asked,
    reported: findings.map((each) => `${each.code} ${each.place.path}`),
    reasons: findings.map((each) => sayFinding(each).reason),
    remedies: findings.map((each) => sayFinding(each).remedy),
  };
}

describe('requirements find their regions', () => {
  test('a layer asks of every region directly inside its outlines; the rest is land', () => {
    const { depths, reported } = ask([{ layer: 'BAYS', depth: 1 }]);
    expect(depths).toEqual({ R02: 1, R03: 1 });
    expect(reported).toEqual([]);
  });
  test('an outline drawn on two layers answers to both', () => {
    const regions = PANEL.regions.map((each) =>
      each.id === 'R04' ? { ...each, layers: ['POCKETS', 'WELLS'] } : each,
    );
    expect(ask([{ layer: 'WELLS', depth: 3 }], 'mm', { ...PANEL, regions }).depths).toEqual({ R04: 3 });
  });
  test('a point asks of the region that holds it, whatever the layer, and tolerance goes with it', () => {
    const { asked } = ask([{ at: [50, 50], thickness: 1.5, plus: 0.1, minus: 0.02 }]);
    expect([...asked]).toEqual([
      ['R04', { depth: 2.5, plus: 0.1, minus: 0.02, asThickness: true, behind: 0 }],
    ]);
  });
  test('a point wins over a layer, in either order', () => {
    const layer = { layer: 'BAYS', depth: 1 };
    const point = { at: [150, 50] as [number, number], depth: 2 };
    expect(ask([layer, point])).toMatchObject({ depths: { R02: 1, R03: 2 }, reported: [] });
    expect(ask([point, layer])).toMatchObject({ depths: { R02: 1, R03: 2 }, reported: [] });
  });
  test('a point may ask a region to stay land where its layer asks for depth', () => {
    expect(
      ask([
        { layer: 'BAYS', depth: 1 },
        { at: [150, 50], depth: 0 },
      ]),
    ).toMatchObject({ depths: { R02: 1, R03: 0 }, reported: [] });
  });
  test('a point in an inch drawing is in inches', () => {
    expect(ask([{ at: [50 / 25.4, 50 / 25.4], depth: 1 }], 'in').depths).toEqual({ R04: 1 });
  });
});

describe('requirement-meets-no-region', () => {
  test('a layer without regions, with the one that was meant', () => {
    const { reported, remedies } = ask([{ layer: 'BAY', depth: 1 }]);
    expect(reported).toEqual(['requirement-meets-no-region requirements[0].layer']);
    expect(remedies).toEqual(['Did you mean "BAYS"? Layers with regions: BAYS, POCKETS, TRIM.']);
  });
  test('a layer in other letters', () => {
    expect(ask([{ layer: 'bays', depth: 1 }]).remedies[0]).toContain('Did you mean "BAYS"?');
  });
  test('a point beside the part', () => {
    const { reported, reasons } = ask([{ at: [250, 50], depth: 1 }]);
    expect(reported).toEqual(['requirement-meets-no-region requirements[0].at']);
    expect(reasons).toEqual(['No region of the part contains the point 250, 50 mm.']);
  });
});

describe('requirement-on-line', () => {
  test.each([
    [100, 50],
    [100.004, 50],
    [30, 30],
    [0, 50],
    [200, 100],
  ])('a point at %f, %f names neither side', (x, y) => {
    expect(ask([{ at: [x, y], depth: 1 }]).reported).toEqual(['requirement-on-line requirements[0].at']);
  });
  test('a point just clear of the line names its region', () => {
    expect(ask([{ at: [100.006, 50], depth: 1 }])).toMatchObject({ depths: { R03: 1 }, reported: [] });
  });
});

describe('requirements-clash', () => {
  test('two of one layer, named once for all its regions', () => {
    const { reported, reasons } = ask([
      { layer: 'BAYS', depth: 1 },
      { layer: 'BAYS', depth: 2 },
    ]);
    expect(reported).toEqual(['requirements-clash requirements[1]']);
    expect(reasons).toEqual([
      'requirements[0] and requirements[1] set different requirements for 2 regions.',
    ]);
  });
  test('two points in one region', () => {
    const { reasons } = ask([
      { at: [40, 40], depth: 1 },
      { at: [60, 60], depth: 1, plus: 0.2 },
    ]);
    expect(reasons).toEqual([
      'requirements[0] and requirements[1] set different requirements for region R04.',
    ]);
  });
  test('a point settles what two of one layer dispute', () => {
    const disputed = [
      { layer: 'BAYS', depth: 1 },
      { layer: 'BAYS', depth: 2 },
      { at: [150, 50] as [number, number], depth: 1.5 },
    ];
    expect(ask(disputed).reasons).toEqual([
      'requirements[0] and requirements[1] set different requirements for region R02.',
    ]);
    const settled = ask([...disputed, { at: [25, 25], depth: 1.5 }]);
    expect(settled).toMatchObject({ depths: { R02: 1.5, R03: 1.5 }, reported: [] });
  });
  test('the same asked twice is no clash', () => {
    const twice = [
      { at: [40, 40] as [number, number], depth: 1 },
      { at: [60, 60] as [number, number], thickness: 3 },
    ];
    expect(ask(twice)).toMatchObject({ depths: { R04: 1 }, reported: [] });
  });
});

test('a taper is handed on, with the depth at the region’s label', () => {
  const taper = {
    from: [0, 0] as [number, number],
    to: [100, 0] as [number, number],
    depthFrom: 1,
    depthTo: 2,
  };
  const { asked, depths, reported } = ask([{ layer: 'BAYS', taper }]);
  // Labels at x = 20 and x = 150: a fifth of the way, and past the end.
  expect(depths).toEqual({ R02: 1.2, R03: 2 });
  expect(asked.get('R02')?.tapers).toHaveLength(1);
  expect(reported).toEqual([]);
});
