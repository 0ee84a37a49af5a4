/** Lines that came back, and the pieces that they cut: which stage peels each, what is missing and where. */
import { beforeAll, describe, expect, test } from 'vitest';
import { loopsArea, type Path, type Span } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { assignPieces } from '#run/compare/assign-pieces.ts';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

/** Two pockets, each nearly filled by a deeper one: 3200 mm² of 4400 and 2500 mm² of 3850; round each a narrow ring of floor. */
const PLATE = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [220, 120]),
    box('POCKETS', [20, 20], [75, 100]),
    box('DEEP', [28, 27], [68, 93]),
    box('POCKETS', [110, 30], [180, 85]),
    box('DEEP', [121, 36], [172, 79]),
  ],
});

async function planOf(masking: 'peel-next' | 're-mask'): Promise<EtchPlan> {
  const { plan } = await runJob(
    {
      jobText: JSON.stringify({
        ...buoyLidJob,
        process: { ...buoyLidJob.process, masking },
        requirements: [
          { layer: 'POCKETS', depth: 1.2 },
          { layer: 'DEEP', depth: 2.4 },
        ],
      }),
      drawingName: 'plate.dxf',
      drawingBytes: new TextEncoder().encode(PLATE),
    },
    { withoutFiles: true },
  );
  if (plan === undefined) throw new Error('the plate can be planned');
  return plan;
}

let plan: EtchPlan;
let remasked: EtchPlan;
beforeAll(async () => {
  plan = await planOf('peel-next');
  remasked = await planOf('re-mask');
});

const linesOf = (of: EtchPlan, stage: number): readonly Path[] => of.stages[stage]?.lines ?? [];
const allLines = (of: EtchPlan) => of.stages.flatMap(({ lines }) => lines);
const leftMost = ({ spans }: Path) => Math.min(...spans.map(({ start }) => start.x));
const assigned = (paths: readonly Path[], of = plan) => assignPieces(of, paths, 0.05);
const reported = (paths: readonly Path[], of = plan) =>
  assigned(paths, of).findings.map(({ code, facts, place }) => ({ code, facts, at: place.at }));
const areas = (stages: readonly { opening: readonly (readonly Span[])[] }[]) =>
  stages.map(({ opening }) => loopsArea(opening));

describe('our own lines', () => {
  test('make the openings of the plan, and there is nothing to report', () => {
    for (const of of [plan, remasked]) {
      const { stages, findings } = assigned(allLines(of), of);
      expect(findings).toEqual([]);
      expect(areas(stages)).toEqual(areas(of.stages).map((area) => expect.closeTo(area, 3)));
    }
  });

  test('in any order, and each ending past its own start, too', () => {
    const past = allLines(plan)
      .toReversed()
      .map(({ closed, spans }): Path => {
        const [first] = spans;
        if (first?.kind !== 'line') return { closed, spans };
        const end = { x: (first.start.x + first.end.x) / 2, y: (first.start.y + first.end.y) / 2 };
        return { closed: false, spans: [...spans, { ...first, end }] };
      });
    expect(reported(past)).toEqual([]);
  });
});

describe('returned-line-doubled', () => {
  test('a line drawn twice, at a place on it', () => {
    const [first] = linesOf(plan, 0).toSorted((a, b) => leftMost(a) - leftMost(b));
    const found = reported([...allLines(plan), ...(first === undefined ? [] : [first])]);
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set(['returned-line-doubled']));
    // DEEP from (28, 27) to (68, 93), its line no farther than 1.5 mm in or out of it.
    for (const { at = { x: 0, y: 0 } } of found)
      expect(Math.max(Math.abs(at.x - 48) - 20, Math.abs(at.y - 60) - 33)).toBeLessThan(1.5);
  });
});

describe('returned-line-open', () => {
  const opened = (by: number): readonly Path[] =>
    allLines(plan).map((path, index) => {
      const [first, ...others] = path.spans;
      if (index !== 0 || first?.kind !== 'line') return path;
      const length = Math.hypot(first.end.x - first.start.x, first.end.y - first.start.y);
      const start = {
        x: first.start.x + (by * (first.end.x - first.start.x)) / length,
        y: first.start.y + (by * (first.end.y - first.start.y)) / length,
      };
      return { closed: false, spans: [{ ...first, start }, ...others] };
    });

  test('a gap of 0.2 mm, with its width and place', () => {
    const corner = allLines(plan)[0]?.spans[0]?.start ?? { x: 0, y: 0 };
    const gaps = reported(opened(0.2)).filter(({ code }) => code === 'returned-line-open');
    expect(gaps.map(({ facts }) => facts)).toContainEqual({ gap: expect.closeTo(0.2, 6) });
    for (const { at } of gaps)
      expect(Math.hypot((at?.x ?? 0) - corner.x, (at?.y ?? 0) - corner.y)).toBeLessThan(0.21);
    expect(reported(opened(0.2)).map(({ code }) => code)).not.toContain('returned-piece-missing');
    // A gap within the join tolerance is none.
    expect(reported(opened(0.04))).toEqual([]);
  });

  test('a line that leads nowhere, where it ends', () => {
    const stray: Path = {
      closed: false,
      spans: [{ kind: 'line', start: { x: 90, y: 50 }, end: { x: 97, y: 61 } }],
    };
    const found = reported([...allLines(plan), stray]);
    expect(found.map(({ code, facts }) => [code, facts])).toEqual(
      found.map(() => ['returned-line-open', { gap: undefined }]),
    );
    expect(found.some(({ at }) => [90, 97].includes(Math.round(at?.x ?? 0)))).toBe(true);
  });
});

describe('returned-piece-missing', () => {
  /** Without the line of one stage about the left pocket. */
  const without = (stage: number, of: EtchPlan) => {
    const gone = linesOf(of, stage).toSorted((a, b) => leftMost(a) - leftMost(b))[0];
    return allLines(of).filter((path) => path !== gone);
  };

  test('the outer line gone: its piece is, at the middle of a long side of it', () => {
    const [found, ...others] = reported(without(1, plan));
    expect(others).toEqual([]);
    expect(found).toMatchObject({ code: 'returned-piece-missing', facts: { stage: 2, isEarly: false } });
    // POCKETS from (20, 20) to (75, 100): the sides left and right are the longer ones.
    const { x = 0, y = 0 } = found?.at ?? {};
    expect(Math.min(Math.abs(x - 20), Math.abs(x - 75))).toBeLessThan(1.5);
    expect(y).toBeCloseTo(60, 0);
  });

  test('the inner line gone: most of the pocket is opened with stage 1, and the ring comes too early', () => {
    expect(reported(without(0, plan))).toMatchObject([
      { code: 'returned-piece-missing', facts: { stage: 2, isEarly: true } },
    ]);
  });

  test('with a new coat for each stage no piece is early: what stage 1 opens is coated over', () => {
    // Without its outer line stage 1 still peels DEEP, more than half of its piece; without the inner one stage 2 peels all of the pocket.
    expect(reported(without(0, remasked), remasked)).toEqual([]);
    expect(reported(without(1, remasked), remasked)).toEqual([]);
  });

  test('the inner line gone and the outer one left open: each reported once, where it is', () => {
    const [inner, outer] = [0, 1].map(
      (stage) => linesOf(plan, stage).toSorted((a, b) => leftMost(a) - leftMost(b))[0],
    );
    // Without its first side: three are left of four.
    const paths = allLines(plan).flatMap((path): Path[] => {
      if (path === inner) return [];
      return path === outer ? [{ closed: false, spans: path.spans.slice(1) }] : [path];
    });
    const found = reported(paths);
    expect(found.map(({ code }) => code).filter((code) => code !== 'returned-line-open')).toEqual([
      'returned-piece-missing',
    ]);
    expect(found.some(({ code }) => code === 'returned-line-open')).toBe(true);
    const missing = found.find(({ code }) => code === 'returned-piece-missing');
    expect(missing?.facts).toEqual({ stage: 1, isEarly: false });
    // √(2.4² − 1.2²) = 2.078 mm within DEEP, from (28, 27) to (68, 93).
    const { x = 0, y = 0 } = missing?.at ?? {};
    expect(Math.max(Math.abs(x - 48) - 20, Math.abs(y - 60) - 33)).toBeCloseTo(-2.078, 3);
  });

  test('no line at all: every piece of every stage', () => {
    const { stages, findings } = assigned([]);
    expect(areas(stages)).toEqual([0, 0]);
    expect(findings.map(({ facts }) => facts)).toEqual(
      [1, 1, 2, 2].map((stage) => ({ stage, isEarly: false })),
    );
  });
});
