/** Lines of the opposite hand come back: named by our own files, or found because they fit only when mirrored. */
import { beforeAll, describe, expect, test } from 'vitest';
import { compareReturned } from '#run/compare/compare-returned.ts';
import type { OutputFile } from '#run/output-file.ts';
import { type RunInput, runJob } from '#run/run-job.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const LID = [
  box('TRIM', [3, -2], [203, 118]),
  box('POCKETS', [20, 20], [90, 100]),
  circle('ROUND', [150, 62], 21),
  box('BACK', [105, 17], [190, 103]),
];
const lid: RunInput = {
  jobText: JSON.stringify({
    ...buoyLidJob,
    layers: { outline: ['TRIM'], far: ['BACK'] },
    requirements: [
      { layer: 'POCKETS', depth: 1.2 },
      { layer: 'ROUND', depth: 0.7 },
      { layer: 'BACK', depth: 1.2, face: 'far' },
    ],
    handoff: { files: ['program'], hand: 'opposite' },
  }),
  drawingName: 'lid.dxf',
  drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities: LID })),
};

let files: readonly OutputFile[] = [];
beforeAll(async () => {
  files = (await runJob(lid)).files;
});

describe('returned-opposite-hand: our own files', () => {
  test.each([
    ['scribe-opposite.dxf', 'scribe', 'near'],
    ['scribe-far-opposite.dxf', 'scribe', 'far'],
    ['scribe-opposite.nc', 'program', 'near'],
    ['scribe-far-opposite.nc', 'program', 'far'],
  ] as const)('%s says so, and comes back with every edge within 2 µm', async (name, kind, face) => {
    const bytes = files.find((each) => each.name === name)?.bytes;
    if (bytes === undefined) throw new Error(files.map((each) => each.name).join(' '));
    const { comparison, findings } = await compareReturned(lid, { kind, name, bytes });
    expect(findings.map(({ code, facts }) => [code, facts])).toEqual([
      ['returned-opposite-hand', { isNamed: true, about: 0 }],
    ]);
    expect([comparison?.face, comparison?.hand]).toEqual([face, 'opposite']);
    expect(comparison?.edges).toHaveLength(face === 'near' ? 2 : 1);
    for (const { outward, inward } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
    }
  });
});

describe('lines that name no hand', () => {
  // The lines of POCKETS 1.2 inside, of ROUND 0.7: mirrored about x = at / 2.
  const linesOf = (turned: (x: number) => number) => [
    box(
      'SCRIBE-01',
      [Math.min(turned(21.2), turned(88.8)), 21.2],
      [Math.max(turned(21.2), turned(88.8)), 98.8],
    ),
    circle('SCRIBE-02', [turned(150), 62], 20.3),
  ];
  const compared = (entities: readonly string[]) => {
    const bytes = new TextEncoder().encode(dxf({ insunits: 4, entities }));
    return compareReturned(lid, { kind: 'scribe', name: 'cam.dxf', bytes });
  };

  test.each([
    ['about x = 0', 0],
    ['about the middle of the sheet', 206],
    ['about any upright line', -71],
  ])('mirrored %s they fit, and it says so', async (_, at) => {
    const { comparison, findings } = await compared(linesOf((x) => at - x));
    expect(findings.map(({ code, facts }) => [code, facts])).toEqual([
      ['returned-opposite-hand', { isNamed: false, about: expect.closeTo(at / 2, 6) }],
    ]);
    expect(comparison?.hand).toBe('opposite');
    for (const { outward, inward } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
    }
  });

  test('as drawn they are taken as they are', async () => {
    const { comparison, findings } = await compared(linesOf((x) => x));
    expect(findings).toEqual([]);
    expect(comparison?.hand).toBe('as-drawn');
  });

  test('of another part they are missing, not mirrored', async () => {
    const { comparison, findings } = await compared([box('SCRIBE-01', [-40, 200], [10, 230])]);
    expect(comparison?.hand).toBe('as-drawn');
    expect(new Set(findings.map(({ code }) => code))).toContain('returned-piece-missing');
    expect(findings.map(({ code }) => code)).not.toContain('returned-opposite-hand');
  });
});
