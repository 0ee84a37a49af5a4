/**
 * All files of a part that lies far out: thirty-eight kilometres from the origin, and where a survey frame puts it (eastings and
 * northings of the universal transverse Mercator grid, metres read as such). What others lay over the drawing has its coordinates;
 * solids, whose numbers are single precision, say where they are counted from.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { correctRun } from '#run/correct-run.ts';
import { readReview, reviewText } from '#run/review.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { sha256Of } from '#run/sha256-of.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

function lid({ x, y }: Place): string[] {
  return [
    box('TRIM', [x, y], [x + 200, y + 120]),
    box('POCKETS', [x + 20, y + 20], [x + 120, y + 100]),
    box('DEEP', [x + 45, y + 40], [x + 95, y + 80]),
    circle('ROUND', [x + 160, y + 60], 25),
  ];
}

const run = (at: Place, more: { readonly earlierPlanText?: string; readonly deep?: number } = {}) =>
  runJob({
    jobText: JSON.stringify({
      ...buoyLidJob,
      requirements: [
        { layer: 'POCKETS', depth: 1.2 },
        { layer: 'DEEP', depth: more.deep ?? 2.4 },
        { at: [at.x + 160, at.y + 61], depth: 0.8 },
      ],
      handoff: {
        files: HANDOFF_FILES,
        paper: 'a3',
        sections: [{ name: 'A', from: [at.x - 5, at.y + 60], to: [at.x + 205, at.y + 55] }],
        template: {
          holes: {
            at: [
              [at.x - 12, at.y + 30],
              [at.x + 212, at.y + 95],
            ],
          },
        },
      },
    }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities: lid(at) })),
    ...(more.earlierPlanText === undefined ? {} : { earlierPlanText: more.earlierPlanText }),
  });

const bytesOf = ({ files }: RunResult, name: string): Uint8Array => {
  const file = files.find((each) => each.name === name);
  if (file === undefined) throw new Error(`there is no ${name}`);
  return file.bytes;
};
const textOf = (result: RunResult, name: string) => new TextDecoder().decode(bytesOf(result, name));

/** Every pair of coordinates under groups 10 and 20 of a DXF's entities. */
function pairs(text: string): [number, number][] {
  const [, entities = ''] = text.split(/ENTITIES\r?\n|ENDSEC\r?\n\s*0\r?\nSECTION\r?\n\s*2\r?\nOBJECTS/);
  const lines = entities.split(/\r?\n/);
  return lines.flatMap((line, n) =>
    n % 2 === 0 && line.trim() === '10' && lines[n + 2]?.trim() === '20'
      ? [[Number(lines[n + 1]), Number(lines[n + 3])] as [number, number]]
      : [],
  );
}

const FAR: readonly Place[] = [
  { x: 4_512_345.125, y: -37_654_321.5 },
  { x: 512_345_678.25, y: 5_412_345_678.5 },
];

describe.each(FAR)('a lid at $x, $y', (at) => {
  let near: RunResult;
  let far: RunResult;
  let home: Place;
  /** mm: what a coordinate is worth out there, and a few roundings of it. */
  const slack = 1e-5;
  beforeAll(async () => {
    far = await run(at);
    const { x: byX = 0, y: byY = 0 } = far.drawing?.origin ?? {};
    // The same lid within a metre of the origin, where nothing is moved.
    home = { x: at.x - byX, y: at.y - byY };
    near = await run(home);
    expect(near.drawing?.origin).toBeUndefined();
    expect(Math.abs(home.x) + Math.abs(home.y)).toBeLessThan(1000);
  });

  test('the same files, and one finding more', () => {
    expect(far.files.map(({ name }) => name)).toEqual(near.files.map(({ name }) => name));
    const codes = ({ findings }: RunResult) => findings.map(({ code }) => code).sort();
    expect(codes(far)).toEqual([...codes(near), 'drawing-far-out'].sort());
  });

  test('templates lie over the drawing, slots, sheet, holes and words', () => {
    const names = near.files.map(({ name }) => name).filter((name) => /^template-\d+\.dxf$/.test(name));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const [here, there] = [pairs(textOf(near, name)), pairs(textOf(far, name))];
      expect(there.length).toBe(here.length);
      const apart = here.map(([x, y], n) => {
        const [farX, farY] = there[n] ?? [0, 0];
        return Math.hypot(farX - at.x - (x - home.x), farY - at.y - (y - home.y));
      });
      expect(apart.length).toBeGreaterThan(100);
      expect(Math.max(...apart)).toBeLessThan(slack);
    }
  });

  test('a section is drawn along itself, and says where it was cut', () => {
    const extent = (result: RunResult) => {
      const drawn = pairs(textOf(result, 'section-01.dxf'));
      return [Math.min, Math.max].flatMap((most) =>
        [0, 1].map((axis) => most(...drawn.map((each) => each[axis] ?? 0))),
      );
    };
    extent(near).forEach((side, n) => {
      expect(extent(far)[n]).toBeCloseTo(side, 3);
    });
    const from = `${(at.x - 5).toFixed(3)}, ${(at.y + 60).toFixed(3)}`;
    expect(textOf(far, 'section-01.dxf')).toContain(`From ${from} to`);
    expect(textOf(far, 'section-01.svg')).toMatch(/^<svg/);
  });

  test('inspection points are the drawing’s own, and as readings they find their floors again', () => {
    const rows = (text: string) => text.split('\n').filter((row) => /^P?\d/.test(row));
    const [here, there] = [near, far].map((each) =>
      rows(textOf(each, 'inspection-points.csv')).map((row) => row.split(',')),
    );
    expect(there?.length).toBe(here?.length);
    here?.forEach((row, n) => {
      expect(Number(there?.[n]?.[4]) - at.x).toBeCloseTo(Number(row[4]) - home.x, 5);
      expect(Number(there?.[n]?.[5]) - at.y).toBeCloseTo(Number(row[5]) - home.y, 5);
    });
    // By place alone: 2.40 planned, 2.35 read beside the pocket's middle after all minutes.
    const last = far.planFile?.stages.at(-1);
    const reading = (result: RunResult, { x, y }: Place) =>
      correctRun({
        planText: textOf(result, 'plan.json'),
        readingsText: `stage,minutes,x,y,depth\n${last?.number},${last?.minutes},${x},${y},2.35\n`,
        recordText: undefined,
      });
    const taken = reading(far, { x: at.x + 72.5, y: at.y + 61.25 });
    const atHome = reading(near, { x: home.x + 72.5, y: home.y + 61.25 });
    expect(taken.findings.map(({ code }) => code)).toEqual(atHome.findings.map(({ code }) => code));
    expect(taken.corrected?.regions.length).toBe(3);
    for (const { id, depth } of atHome.corrected?.regions ?? []) {
      const there = taken.corrected?.regions.find((each) => each.id === id);
      expect(there?.depth.value).toBeCloseTo(depth.value, 5);
    }
    // 0.3 mm inside the drawn edge stands the wall, and 300 mm aside no part.
    const refused = (place: Place) => reading(far, place).findings.map(({ code }) => code);
    expect(refused({ x: at.x + 45.3, y: at.y + 60 })).toContain('reading-off-floor');
    expect(refused({ x: at.x + 500, y: at.y + 60 })).toContain('reading-unclear');
  });

  test('GLB and STL keep their digits, and say where they are counted from', () => {
    const glb = bytesOf(far, 'etched-part.glb');
    const length = new DataView(glb.buffer, glb.byteOffset).getUint32(12, true);
    const { nodes, accessors } = JSON.parse(new TextDecoder().decode(glb.subarray(20, 20 + length)));
    const [x = 0, , z = 0] = nodes[0].translation;
    const { min, max } = accessors[0];
    expect(x * 1000 + min[0] * 1000 - at.x).toBeCloseTo(0, 3);
    expect(x * 1000 + max[0] * 1000 - at.x).toBeCloseTo(200, 3);
    expect(-z * 1000 - max[2] * 1000 - at.y).toBeCloseTo(0, 3);
    expect(-z * 1000 - min[2] * 1000 - at.y).toBeCloseTo(120, 3);

    const stl = bytesOf(far, 'etched-part.stl');
    const heading = new TextDecoder().decode(stl.subarray(0, 80));
    const [, fromX = '', fromY = '', hash = ''] =
      /^Isobath mm from (-?\d+) (-?\d+) plan ([0-9a-f]+)$/.exec(heading) ?? [];
    const view = new DataView(stl.buffer, stl.byteOffset);
    const corners = Array.from({ length: view.getUint32(80, true) }, (_, n) => [
      view.getFloat32(84 + 50 * n + 12, true),
      view.getFloat32(84 + 50 * n + 16, true),
    ]);
    expect(Number(fromX) + Math.min(...corners.map(([x = 0]) => x)) - at.x).toBeCloseTo(0, 3);
    expect(Number(fromY) + Math.min(...corners.map(([, y = 0]) => y)) - at.y).toBeCloseTo(0, 3);
    expect(sha256Of(textOf(far, 'plan.json')).startsWith(hash)).toBe(true);
    expect(far.files.find(({ name }) => name === 'etched-part.stl')?.what).toContain(`(${fromX}, ${fromY})`);
  });

  test('the review sheets show the same pictures and name the drawing’s own places', {
    tags: ['long'],
  }, async () => {
    const [here, there] = await Promise.all([near, far].map((each) => readPdf(bytesOf(each, 'review.pdf'))));
    expect(there?.length).toBe(here?.length);
    const words = there?.map(({ text }) => text).join(' ');
    expect(words).toContain(`From ${(at.x - 5).toFixed(2)}, ${(at.y + 60).toFixed(2)} to`);
    // No stroke leaves its page, as the points of a picture in another frame would.
    for (const { places, width, height } of there ?? []) {
      expect(places.every(([x, y]) => x > 0 && y > 0 && x < width && y < height)).toBe(true);
    }
    for (const name of ['traveller.pdf', 'template.pdf']) {
      const [a, b] = await Promise.all([near, far].map((each) => readPdf(bytesOf(each, name))));
      expect(b?.map(({ places }) => places.length)).toEqual(a?.map(({ places }) => places.length));
    }
  });

  test('a review and an earlier issue find their regions and lines again', { tags: ['long'] }, async () => {
    const planText = textOf(far, 'plan.json');
    const remarks = [
      { stage: 1, at: [at.x + 70, at.y + 60] as [number, number], text: 'Look at this corner.' },
    ];
    const text = reviewText({ planText, reviewer: 'N. Rowan', date: '2026-03-04', checked: [1], remarks });
    const { review, findings } = readReview(text, 'lid.review.json');
    expect(findings).toEqual([]);
    expect(review?.remarks).toEqual(remarks);

    const again = await run(at, { earlierPlanText: planText });
    expect(again.since?.said).toEqual([]);
    const deeper = await run(at, { earlierPlanText: planText, deep: 2.5 });
    const deeperNear = await run(home, { earlierPlanText: textOf(near, 'plan.json'), deep: 2.5 });
    const atPlaceOf = (by: Place) => (sentence: string) =>
      sentence.replace(
        / at (-?[\d.]+), (-?[\d.]+)\.$/,
        (_, x, y) => ` at ${(x - by.x).toFixed(0)}, ${(y - by.y).toFixed(0)}.`,
      );
    const said = deeper.since?.said.map(atPlaceOf(at));
    expect(said).toEqual(deeperNear.since?.said.map(atPlaceOf(home)));
    expect(said?.some((each) => each.includes('moved, most by'))).toBe(true);
  });
});
