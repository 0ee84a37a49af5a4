/** A comparison as JSON: the edges of a lid whose lines came back moved, with what was asked of them, in millimetres. */
import { describe, expect, test } from 'vitest';
import type { Path, Span } from '#geometry/span.ts';
import { movePath } from '#geometry/spans/move-spans.ts';
import { compareReturned } from '#run/compare/compare-returned.ts';
import { comparisonRecord } from '#run/compare/comparison-record.ts';
import { runJob } from '#run/run-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, buoyLidJob, dxf, line } from '#support/drawings/small-drawing.ts';

/** One pocket in a plate; its edge may come out 0.25 mm outside of its place or 0.12 inside. */
const asked = { plus: 0.25, minus: 0.12 };
const at = { x: 0, y: 0 };

function lid({ x, y }: { x: number; y: number }, edge: object = { edge: asked }) {
  const job = { ...buoyLidJob, requirements: [{ layer: 'POCKET', depth: 1.2, ...edge }] };
  const entities = [box('TRIM', [x, y], [x + 90, y + 70]), box('POCKET', [x + 20, y + 15], [x + 61, y + 52])];
  return {
    jobText: JSON.stringify(job),
    drawingName: 'lid.dxf',
    drawingBytes: bytesOf(dxf({ insunits: 4, entities })),
  };
}

/** The lid's lines, each span moved as the change says, and sent back. */
async function returned(input: ReturnType<typeof lid>, change: (lines: readonly Path[]) => readonly Path[]) {
  const { plan, drawing } = await runJob(input, { withoutFiles: true });
  const origin = drawing?.origin ?? { x: 0, y: 0 };
  const lines = change(plan?.stages.flatMap((stage) => stage.lines) ?? []).map((each) =>
    movePath(each, origin),
  );
  const entities = lines.flatMap(({ spans }) =>
    spans.map(({ start, end }: Span) => line('SCRIBE-01', [start.x, start.y], [end.x, end.y])),
  );
  const bytes = bytesOf(dxf({ insunits: 4, entities }));
  return compareReturned(input, { kind: 'scribe', name: 'back.dxf', bytes });
}
const moved = (x: number, y: number) => (lines: readonly Path[]) =>
  lines.map((each) => movePath(each, { x, y }));

describe('a line that came back moved', () => {
  test('by 0.2 mm to the right and 0.14 down: within what is asked outward, not inward', async () => {
    const { comparison, findings } = await returned(lid(at), moved(0.2, -0.14));
    if (comparison === undefined) throw new Error('the lines can be compared');
    const { lines, edges, floors } = comparisonRecord(comparison);
    expect([lines, edges.length, floors]).toEqual([4, 1, []]);
    const [edge] = edges;
    expect(edge).toMatchObject({ level: 1.2, beside: 0, asked, lost: null });
    // Outward most on the right, x = 61; inward most on the left, x = 20.
    expect(edge?.outward).toEqual({
      by: expect.closeTo(0.2, 4),
      at: [expect.closeTo(61, 6), expect.any(Number)],
    });
    expect(edge?.inward).toEqual({
      by: expect.closeTo(0.2, 4),
      at: [expect.closeTo(20, 6), expect.any(Number)],
    });
    expect(findings).toMatchObject([
      {
        code: 'returned-edge-moved',
        facts: { level: 1.2, beside: 0, side: 'inward', by: expect.closeTo(0.2, 4), limit: 0.12 },
        place: { regions: edge?.regions, at: { x: expect.closeTo(20, 6) } },
      },
    ]);
  });

  test('by 0.3 mm: beyond both, and farthest beyond the narrower', async () => {
    const wide = { edge: { plus: 0.12, minus: 0.25 } };
    for (const [edge, side, limit, x] of [
      [{ edge: asked }, 'inward', 0.12, 20],
      [wide, 'outward', 0.12, 61],
    ] as const) {
      const { findings } = await returned(lid(at, edge), moved(0.3, 0));
      expect(findings).toMatchObject([
        { facts: { side, limit }, place: { at: { x: expect.closeTo(x, 6) } } },
      ]);
    }
  });

  test('by 0.1 mm: as asked', async () => {
    const { findings, comparison } = await returned(lid(at), moved(0.1, 0.08));
    expect(findings).toEqual([]);
    expect(comparison?.edges[0]?.outward.by).toBeCloseTo(0.1, 4);
  });

  test('where nothing is asked of the edge, as near as a line is cut by hand counts', async () => {
    const { findings, comparison } = await returned(lid(at, {}), moved(0.3, 0));
    const record = comparison && comparisonRecord(comparison);
    expect(record?.edges[0]?.asked).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(['returned-edge-moved']);
  });

  test('far from the origin every place is in the drawing’s own frame', async () => {
    const far = { x: 4_512_345, y: -37_654_321 };
    const { comparison, findings } = await returned(lid(far), moved(0, 0.3));
    const record = comparison && comparisonRecord(comparison);
    const [edge] = record?.edges ?? [];
    // Up: outward at the top, y = 52; inward at the bottom, y = 15.
    expect((edge?.outward.at[1] ?? 0) - far.y).toBeCloseTo(52, 3);
    expect((edge?.inward.at[1] ?? 0) - far.y).toBeCloseTo(15, 3);
    expect((findings[0]?.place.at?.y ?? 0) - far.y).toBeCloseTo(15, 3);
  });
});

describe('lines that are gone', () => {
  test('returned-edge-lost and returned-floor-changed: all of the edge, and of the floor', async () => {
    // Floor is what is 1.15 mm deep at least: 0.343 mm out from the opening of 38.6 by 34.6 mm, for 1.2² = 1.15² + 0.343².
    const out = Math.sqrt(1.2 ** 2 - 1.15 ** 2);
    const share = ((38.6 + 2 * out) * (34.6 + 2 * out) - (4 - Math.PI) * out ** 2) / (41 * 37);
    // The line lies beside the part.
    const away = (lines: readonly Path[]): readonly Path[] =>
      lines.map((each) => movePath(each, { x: 0, y: 400 }));
    const { comparison, findings } = await returned(lid(at), away);
    const record = comparison && comparisonRecord(comparison);
    const [edge] = record?.edges ?? [];
    expect(edge?.lost?.places).toBe(comparison?.edges[0]?.places);
    expect(edge?.lost?.at).toHaveLength(2);
    expect(record?.floors).toMatchObject([
      {
        level: 1.2,
        planned: { share: expect.closeTo(share, 3), deepest: expect.closeTo(1.2, 6) },
        returned: { share: 0, deepest: 0 },
      },
    ]);
    const [x = 0, y = 0] = record?.floors[0]?.at ?? [];
    expect([x > 20 && x < 61, y > 15 && y < 52]).toEqual([true, true]);
    const id = comparison?.floors[0]?.id;
    expect(findings).toEqual(
      expect.arrayContaining([
        expect.objectContaining({
          code: 'returned-edge-lost',
          facts: { level: 1.2, beside: 0, share: 1 },
          place: expect.objectContaining({ regions: edge?.regions }),
        }),
        expect.objectContaining({
          code: 'returned-floor-changed',
          facts: { level: 1.2, planned: expect.closeTo(share, 3), share: 0 },
          place: expect.objectContaining({ regions: [id] }),
        }),
      ]),
    );
  });
});

test('a job that can’t be planned is reported as it is without the lines', async () => {
  const spoilt = { ...lid(at), drawingBytes: bytesOf('hello') };
  const { comparison, findings } = await compareReturned(spoilt, {
    kind: 'scribe',
    name: 'back.dxf',
    bytes: bytesOf(''),
  });
  expect(comparison).toBeUndefined();
  expect(findings.some(({ severity, place }) => severity === 'stop' && place.file === undefined)).toBe(true);
});
