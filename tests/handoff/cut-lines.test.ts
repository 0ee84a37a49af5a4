/** The order of lines along which a tool travels least in the air, over all stages of one program. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, type Point } from '#geometry/point.ts';
import { lineSpan, type Path } from '#geometry/span.ts';
import { type CutLine, cutLines } from '#handoff/cut-lines.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';
import { trials } from '#support/seeds/property-runs.ts';

const AS_PLANNED = { start: 'as-planned', direction: 'climb', overcut: 0, order: 'as-planned' } as const;
const SHORT = { ...AS_PLANNED, order: 'short-travel' } as const;

/** mm in the air: from the drawing's origin to the first line, and from each to the next, whatever its stage. */
function inTheAir(lines: readonly CutLine[]): number {
  let at: Point = { x: 0, y: 0 };
  return lines.reduce((sum, { path: { spans } }) => {
    const [start, end] = [spans[0]?.start ?? at, spans.at(-1)?.end ?? at];
    const way = distance(at, start);
    at = end;
    return sum + way;
  }, 0);
}

function stagesOf(lines: readonly (readonly Path[])[]): Stage[] {
  const [stage] = handMadePlan.stages;
  if (stage === undefined) throw new Error('the plan has a stage');
  return lines.map((each, index) => ({ ...stage, number: index + 1, lines: each }));
}

const open = (x0: number, y0: number, x1: number, y1: number): Path => ({
  closed: false,
  spans: [lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 })],
});

const place = fc.integer({ min: -90, max: 160 });
const line = fc.oneof(
  fc.tuple(place, place, place, place).map(([x0, y0, x1, y1]) => open(x0, y0, x1 + 0.5, y1)),
  fc.tuple(place, place).map(([x, y]): Path => ({ closed: true, spans: rectangle(x, y, x + 13, y + 7) })),
);

describe('short-travel', () => {
  test('next-stage-start: 1 mm less within a stage that ends 21 mm farther from the next is not taken', () => {
    const square = (x: number, y: number): Path => ({ closed: true, spans: rectangle(x, y, x + 5, y + 4) });
    // As planned 11 + 21, and 2 to the next stage; the nearest first 10 + 21, and 23 to the next.
    const stages = stagesOf([[square(0, -11), square(0, 10)], [square(0, 12)]]);
    expect(inTheAir(cutLines(stages, AS_PLANNED))).toBe(34);
    expect(inTheAir(cutLines(stages, SHORT))).toBe(34);
    // Where nothing comes after, the 1 mm counts.
    expect(inTheAir(cutLines(stages.slice(0, 1), SHORT))).toBe(31);
  });

  test('never travels farther than the planned order, the way to the next stage included, and loses no line', () => {
    let less = 0;
    fc.assert(
      fc.property(
        fc.array(fc.array(line, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 5 }),
        fc.constantFrom('as-planned', 'mid-side', 'corner'),
        fc.constantFrom(0, 2.5),
        (lines, start, overcut) => {
          const stages = stagesOf(lines);
          const planned = cutLines(stages, { ...AS_PLANNED, start, overcut });
          const short = cutLines(stages, { ...SHORT, start, overcut });
          expect(inTheAir(short)).toBeLessThanOrEqual(inTheAir(planned) + 1e-9);
          if (inTheAir(short) < inTheAir(planned) - 1) less++;
          expect(short.map(({ stage }) => stage.number)).toEqual(planned.map(({ stage }) => stage.number));
          const reported = (each: readonly CutLine[]) => each.map(({ path }) => JSON.stringify(path)).sort();
          expect(reported(short)).toEqual(reported(planned));
        },
      ),
      { numRuns: trials(500) },
    );
    expect(less).toBeGreaterThan(100);
  });
});
