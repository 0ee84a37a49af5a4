/** A part drawn in a survey frame, forty kilometres out: the same plan as near the origin, and all that leaves in the drawing's own coordinates. */
import { expect, test } from 'vitest';
import { inspectDrawing } from '#run/inspect-drawing.ts';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

/** Odd places, so that no rounding helps; mm. */
const FAR = { x: 4_512_345.125, y: -37_654_321.5 };

function lid({ x, y }: { x: number; y: number }): string[] {
  return [
    box('TRIM', [x, y], [x + 200, y + 120]),
    box('POCKETS', [x + 20, y + 20], [x + 120, y + 100]),
    box('DEEP', [x + 45, y + 40], [x + 95, y + 80]),
    circle('ROUND', [x + 160, y + 60], 25),
  ];
}

async function plan(at: { x: number; y: number }, unit: 4 | 1 = 4) {
  const job = {
    ...buoyLidJob,
    requirements: [
      { at: [at.x + 25, at.y + 25], depth: 1.2 },
      { layer: 'DEEP', depth: 2.4 },
      {
        at: [at.x + 160, at.y + 61],
        taper: { from: [at.x + 130, at.y], to: [at.x + 190, at.y], depthFrom: 0.8, depthTo: 1.4 },
        plus: 0.2,
        minus: 0.2,
      },
    ],
    handoff: { files: ['program', 'inspection', 'scribe-r12'] },
  };
  const result = await runJob({
    jobText: JSON.stringify(job),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: unit, entities: lid(at) })),
  });
  const text = (name: string) =>
    new TextDecoder().decode(result.files.find((each) => each.name === name)?.bytes);
  return { result, text };
}

/** Every pair of coordinates under groups 10 and 20 of a DXF's entities. */
function pairs(text: string): [number, number][] {
  const [, entities = ''] = text.split(/ENTITIES\r?\n/);
  const lines = entities.split(/\r?\n/);
  return lines.flatMap((line, n) =>
    n % 2 === 0 && line.trim() === '10' && lines[n + 2]?.trim() === '20'
      ? [[Number(lines[n + 1]), Number(lines[n + 3])] as [number, number]]
      : [],
  );
}

test('drawing-far-out: plan.json, scribe drawings, program and points are those near the origin, moved', {
  tags: ['long'],
}, async () => {
  const [near, far] = [await plan({ x: 0, y: 0 }), await plan(FAR)];
  const codes = ({ result }: typeof near) => result.findings.map(({ code }) => code).sort();
  expect(codes(far)).toEqual([...codes(near), 'drawing-far-out'].sort());

  const [a, b] = [near.result.planFile, far.result.planFile];
  if (a === undefined || b === undefined) throw new Error('both can be planned');
  expect(b.stages.length).toBe(a.stages.length);
  expect(b.totals.minutes).toBeCloseTo(a.totals.minutes, 9);
  expect(b.totals.removedVolume).toBeCloseTo(a.totals.removedVolume ?? 0, 2);
  a.regions.forEach((region, n) => {
    const [x = 0, y = 0] = b.regions[n]?.label ?? [];
    expect(x - FAR.x).toBeCloseTo(region.label[0], 5);
    expect(y - FAR.y).toBeCloseTo(region.label[1], 5);
  });
  for (const [n, stage] of a.stages.entries()) {
    stage.lines.forEach(({ vertices }, line) => {
      vertices.forEach(([x, y, bulge], vertex) => {
        const [farX = 0, farY = 0, farBulge] = b.stages[n]?.lines[line]?.vertices[vertex] ?? [];
        expect(farX - FAR.x).toBeCloseTo(x, 5);
        expect(farY - FAR.y).toBeCloseTo(y, 5);
        expect(farBulge).toBeCloseTo(bulge, 9);
      });
    });
  }
  for (const name of ['scribe.dxf', 'scribe-r12.dxf']) {
    const [here, there] = [pairs(near.text(name)), pairs(far.text(name))];
    expect(there.length).toBe(here.length);
    const apart = here.filter(([x, y], n) => {
      const [farX, farY] = there[n] ?? [0, 0];
      // The head of an old POLYLINE has a point of zeros that says nothing (DXF reference, release 12).
      const isHead = farX === 0 && farY === 0;
      return !isHead && Math.hypot(farX - FAR.x - x, farY - FAR.y - y) > 1e-5;
    });
    expect(apart).toEqual([]);
  }
  const points = (text: string) => text.split('\n').filter((row) => /^P?\d|,/.test(row)).length;
  expect(points(far.text('inspection-points.csv'))).toBe(points(near.text('inspection-points.csv')));
  expect(far.text('inspection-points.csv')).toContain('4512');
  const program = far.result.files.find(({ name }) => /\.nc$/.test(name));
  expect(new TextDecoder().decode(program?.bytes)).toMatch(/X4512\d{3}\.\d+ Y-3765\d{4}\.\d+/);
});

test('inspect reports places in the drawing’s own coordinates', async () => {
  const { regions, findings } = await inspectDrawing(
    new TextEncoder().encode(dxf({ insunits: 4, entities: lid(FAR) })),
  );
  expect(findings.map(({ code }) => code)).toEqual(['drawing-far-out']);
  expect(regions?.length).toBe(4);
  for (const { at } of regions ?? []) {
    expect(at[0] - FAR.x).toBeGreaterThan(0);
    expect(at[0] - FAR.x).toBeLessThan(200);
    expect(at[1] - FAR.y).toBeGreaterThan(0);
    expect(at[1] - FAR.y).toBeLessThan(120);
  }
});
