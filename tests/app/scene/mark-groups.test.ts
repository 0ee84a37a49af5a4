/** Marks along scribe lines on screen: pixels by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupMiddles, markTicks } from '#app/scene/mark-groups.ts';
import { distance, type Point } from '#geometry/point.ts';
import { arcSpan, distanceToSpan, lineSpan, type Path, type Span } from '#geometry/span.ts';
import { tickPlaces } from '#plan/stage-mark.ts';

const usual = { pixelsPerMm: 2, pitch: 4.6, every: 176 };

function chain(points: readonly Point[], closed: boolean): Path {
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  return { closed, spans: ends.map((end, index) => lineSpan(points[index] ?? end, end)) };
}

const bay = chain(
  [
    { x: 0, y: 0 },
    { x: 110, y: 0 },
    { x: 110, y: 70 },
    { x: 0, y: 70 },
  ],
  true,
);

describe('groups of a mark', () => {
  it('come every 176 px: a bay of 360 mm round at 2 px a mm has four', () => {
    // 720 px / 176 px = 4.09
    expect(groupMiddles(bay, { ...usual, stage: 3 })).toHaveLength(4);
  });

  it('stand clear of corners, ticks as far apart as requested, each across the line', () => {
    for (const stage of [1, 2, 5, 6, 11]) {
      const ticks = markTicks(bay, { ...usual, stage });
      expect(ticks.length % stage).toBe(0);
      for (let at = 0; at < ticks.length; at += stage) {
        const group = ticks.slice(at, at + stage);
        const [first, last] = [group[0], group.at(-1)];
        // 4.6 px at 2 px a mm is 2.3 mm.
        expect(distance(first?.at ?? { x: 0, y: 0 }, last?.at ?? { x: 0, y: 0 })).toBeCloseTo(
          2.3 * (tickPlaces(stage).at(-1) ?? 0),
          9,
        );
        for (const tick of group) {
          for (const corner of bay.spans) expect(distance(tick.at, corner.start)).toBeGreaterThan(1.99);
        }
      }
    }
  });

  it('are none on a line too short for one, as they would be half of another mark', () => {
    const short = chain(
      [
        { x: 0, y: 0 },
        { x: 17.5, y: 0 },
      ],
      false,
    );
    // Five ticks take 4 × 4.6 + 8 = 26.4 px, 13.2 mm; six with their gap 6 × 4.6 + 8 = 35.6 px, 17.8 mm.
    expect(groupMiddles(short, { ...usual, stage: 5 })).toHaveLength(1);
    expect(groupMiddles(short, { ...usual, stage: 6 })).toHaveLength(0);
  });

  it('move from a bend to the straight beside it', () => {
    const spans: Span[] = [
      lineSpan({ x: -60, y: 10 }, { x: 0, y: 10 }),
      arcSpan({ center: { x: 0, y: 0 }, radius: 10, from: Math.PI / 2, sweep: -Math.PI / 2 }),
      lineSpan({ x: 10, y: 0 }, { x: 10, y: -35 }),
    ];
    const [middle] = groupMiddles({ closed: false, spans }, { ...usual, stage: 4, every: 400 });
    // Half of 110.7 mm lies in the straight of 60 mm; its group needs 10.9 mm.
    expect(middle).toBeCloseTo(60 - 10.9 / 2, 1);
  });

  it('go round a hole by rays to its middle', () => {
    const spans = [0, Math.PI].map((from) =>
      arcSpan({ center: { x: 5, y: 7 }, radius: 12, from, sweep: Math.PI }),
    );
    const ticks = markTicks({ closed: true, spans }, { ...usual, stage: 2 });
    expect(ticks).toHaveLength(2);
    for (const { at, across } of ticks) {
      const ray = { x: (at.x - 5) / 12, y: (at.y - 7) / 12 };
      expect(Math.abs(ray.x * across.x + ray.y * across.y)).toBeCloseTo(1, 9);
    }
  });

  it('lie on their line whatever its shape, zoom and stage', () => {
    const span = fc
      .tuple(fc.double({ min: 1, max: 80, noNaN: true }), fc.double({ min: -1.4, max: 1.4, noNaN: true }))
      .filter(([, turn]) => Math.abs(turn) > 0.01);
    fc.assert(
      fc.property(
        fc.array(span, { minLength: 1, maxLength: 7 }),
        fc.double({ min: 0.05, max: 60, noNaN: true }),
        fc.integer({ min: 1, max: 14 }),
        (pieces, pixelsPerMm, stage) => {
          let [at, heading]: [Point, number] = [{ x: 3, y: -2 }, 0.3];
          const spans = pieces.map(([length, turn]) => {
            const radius = length / Math.abs(turn);
            const side = Math.sign(turn);
            const center = {
              x: at.x - Math.sin(heading) * radius * side,
              y: at.y + Math.cos(heading) * radius * side,
            };
            const made = arcSpan({ center, radius, from: heading - (Math.PI / 2) * side, sweep: turn });
            at = made.end;
            heading += turn;
            return made;
          });
          const ticks = markTicks({ closed: false, spans }, { ...usual, pixelsPerMm, stage });
          expect(ticks.length % stage).toBe(0);
          for (const tick of ticks) {
            const off = Math.min(...spans.map((each) => distanceToSpan(each, tick.at)));
            expect(off * pixelsPerMm).toBeLessThan(1e-3);
          }
        },
      ),
    );
  });
});
