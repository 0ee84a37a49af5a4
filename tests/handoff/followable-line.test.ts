/** Segments too short for a machine: merged alike in every file, whatever its figures, start and direction. */
import { parseString } from 'dxf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToSpan, type Path, pointAlong, type Span, spanFromBulge } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { cutLines } from '#handoff/cut-lines.ts';
import { followableLine } from '#handoff/followable-line.ts';
import { machineProgram } from '#handoff/machine-program.ts';
import { scribeDrawing } from '#handoff/scribe-drawing.ts';
import { fillPost, PLAIN_POST } from '#job/formats/post-file.ts';
import { interpretRs274, pointsOfMove } from '#oracle/rs274.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';
import { trials } from '#support/seeds/property-runs.ts';

const AS_PLANNED = { start: 'as-planned', direction: 'climb', overcut: 0, order: 'as-planned' } as const;

interface How {
  readonly start: 'as-planned' | 'corner' | 'mid-side';
  readonly direction: 'climb' | 'conventional';
}

type Place = readonly [x: number, y: number, bulge: number];

function lineThrough(places: readonly Place[], closed: boolean): Path {
  const spans = places.flatMap(([x, y, bulge], index): Span[] => {
    const next = places[index + 1] ?? (closed ? places[0] : undefined);
    return next === undefined ? [] : [spanFromBulge({ x, y }, { x: next[0], y: next[1] }, bulge)];
  });
  return { closed, spans };
}

function stageOf(line: Path) {
  const [stage] = handMadePlan.stages;
  if (stage === undefined) throw new Error('the plan has a stage');
  return { ...stage, lines: [line] };
}

/** The line of scribe.dxf, read by the npm package dxf, in millimetres. */
function drawnLine(line: Path, how: How): readonly Span[] {
  const plan = { ...handMadePlan, sheet: [], stages: [stageOf(line)] };
  const choices = { ...AS_PLANNED, ...how };
  const bytes = scribeDrawing({
    name: 'Lid',
    plan,
    unit: 'mm',
    depthUnit: 'mm',
    planHash: '0',
    choices,
  });
  const [outline] = parseString(new TextDecoder().decode(bytes)).entities.filter(({ layer }) =>
    layer.startsWith('SCRIBE'),
  );
  const vertices = (outline?.vertices ?? []).map(
    ({ x, y, bulge = 0 }: { x: number; y: number; bulge?: number }): [number, number, number] => [
      x,
      y,
      bulge,
    ],
  );
  return pathOfContour({ closed: outline?.closed === true, vertices }).spans;
}

/** Points that the tool passes while it is down, mm, and what it leaves out of the drawing's line. */
function apart(line: Path, drawn: readonly Span[], how: How, post: { unit: 'mm' | 'in'; decimals: number }) {
  const text = machineProgram({
    name: 'Lid',
    planHash: '0',
    jobUnit: 'mm',
    lines: cutLines([stageOf(line)], { ...AS_PLANNED, ...how }),
    post: fillPost({ ...PLAIN_POST, ...post }),
  });
  const moves = interpretRs274(text).moves.filter(({ rapid, from, to }) => !rapid && from.z === to.z);
  const passed = moves.flatMap((move) => pointsOfMove(move, 96));
  const off = passed.map((point) => Math.min(...drawn.map((span) => distanceToSpan(span, point))));
  const missed = drawn.flatMap((span) =>
    [0, 0.3, 0.5, 0.8, 1].map((share) => {
      const { x, y } = pointAlong(span, share);
      return Math.min(...chords(passed).map((chord) => distanceToSpan(chord, { x, y })));
    }),
  );
  return Math.max(...off, ...missed);
}

function chords(points: readonly { x: number; y: number }[]): Span[] {
  return points.slice(1).flatMap((end, i): Span[] => {
    const start = points[i] ?? end;
    return Math.hypot(end.x - start.x, end.y - start.y) > 0 ? [{ kind: 'line', start, end }] : [];
  });
}

describe('a line that a machine can follow, by hand', () => {
  const quarter = Math.tan(Math.PI / 8);

  test('is the line itself where no segment is short, arcs and all', () => {
    const line = lineThrough(
      [
        [1, 2, 0],
        [31, 2, quarter],
        [36, 7, 0],
        [36, 19, 0],
      ],
      false,
    );
    expect(followableLine(line)).toBe(line);
    // Twice the least, and just over it, is still looked at and found good.
    const near = lineThrough(
      [
        [0, 0, 0],
        [20, 0, 0],
        [20, 0.0101, 0],
        [41, 3, 0],
      ],
      false,
    );
    expect(followableLine(near)).toEqual(near);
  });

  test('has none of 0.01 mm to the last figure of a file, and keeps one of 0.010003', () => {
    const across = (length: number) =>
      followableLine(
        lineThrough(
          [
            [0, 0, 0],
            [20, 0, 0],
            [20, length, 0],
            [41, length, 0],
          ],
          false,
        ),
      );
    expect(across(0.010001)?.spans).toHaveLength(2);
    expect(across(0.010003)?.spans).toHaveLength(3);
  });

  test('is nothing where all of it is shorter than that', () => {
    expect(
      followableLine(
        lineThrough(
          [
            [7, 3, 0],
            [7.004, 3, 0],
          ],
          false,
        ),
      ),
    ).toBeUndefined();
  });
});

describe('a machine program beside scribe.dxf', () => {
  test('rounded-below-the-least: a step of 0.0102 mm stays a step where three decimals make it 0.0099', () => {
    // A step across between two parallels; 0.0102 is 0.010 or 0.011 by three decimals, and half of it is what merging moves.
    for (const at of [0.0004, 0.3246, 7.7245]) {
      const line = lineThrough(
        [
          [0, at, 0],
          [20, at, 0],
          [20.0071, at + 0.0073, 0],
          [41, at + 0.0073, 0],
        ],
        false,
      );
      const drawn = drawnLine(line, AS_PLANNED);
      expect(apart(line, drawn, AS_PLANNED, { unit: 'mm', decimals: 3 })).toBeLessThan(0.002);
    }
  });

  test('other-end-first: short segments at the end of a line are merged alike from either end', () => {
    const line = lineThrough(
      [
        [0, 0, 0],
        [20, 0, 0],
        [20.0073, -0.0039, 0],
        [20.0079, -0.0086, 0],
        [20.0052, -0.0116, 0],
        [20.0021, -0.0119, 0],
      ],
      false,
    );
    const back = { start: 'as-planned', direction: 'conventional' } as const;
    const post = { unit: 'mm', decimals: 4 } as const;
    expect(apart(line, drawnLine(line, AS_PLANNED), back, post)).toBeLessThan(0.002);
    expect(apart(line, drawnLine(line, back), AS_PLANNED, post)).toBeLessThan(0.002);
  });

  const step = fc.record({
    length: fc.oneof(
      fc.double({ min: 0.0005, max: 0.021, noNaN: true }),
      fc.double({ min: 2, max: 19, noNaN: true }),
    ),
    turn: fc.double({ min: -1.2, max: 1.2, noNaN: true }),
    bulge: fc.constantFrom(0, 0, 0.3, -0.2),
  });
  const how = fc.record({
    start: fc.constantFrom('as-planned', 'corner', 'mid-side'),
    direction: fc.constantFrom('climb', 'conventional'),
  });
  test.each([
    { unit: 'mm', decimals: 3 },
    { unit: 'mm', decimals: 6 },
    { unit: 'in', decimals: 5 },
  ] as const)(
    'keeps within 0.002 mm of it with $decimals decimals in $unit, however either is started',
    { tags: ['long'] },
    (post) => {
      let made = 0;
      fc.assert(
        fc.property(
          fc.array(step, { minLength: 3, maxLength: 12 }),
          fc.boolean(),
          how,
          how,
          (steps, closed, a, b) => {
            let [x, y, angle] = [3.1, -2.7, 0.2];
            const places: Place[] = steps.map(({ length, turn, bulge }): Place => {
              const place: Place = [x, y, length > 1 ? bulge : 0];
              angle += turn;
              x += length * Math.cos(angle);
              y += length * Math.sin(angle);
              return place;
            });
            const line = lineThrough([...places, [x, y, 0]], closed);
            const drawn = drawnLine(line, a);
            if (drawn.length === 0) return;
            made++;
            expect(apart(line, drawn, b, post)).toBeLessThan(0.002);
          },
        ),
        { numRuns: trials(70) },
      );
      expect(made).toBeGreaterThan(40);
    },
  );
});
