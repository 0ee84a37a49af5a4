import { expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { findBridges } from '#geometry/arrangement/find-bridges.ts';
import { mergeSegments } from '#geometry/arrangement/merge-segments.ts';
import { splitSpans } from '#geometry/arrangement/split-spans.ts';
import { limitEffort } from '#geometry/effort.ts';
import { arcSpan, lineSpan, type Span, spanLength } from '#geometry/span.ts';

const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });

function healed(...curves: readonly (readonly Span[])[]) {
  const spans = canonicalSpans(
    curves.flatMap((curve, source) => curve.map((span): SourcedSpan => ({ span, source }))),
  );
  const split = splitSpans(spans, limitEffort(NO_LIMIT));
  const isBridge = findBridges(split.segments, split.points.length);
  const kept = split.segments.filter((_, number) => isBridge[number] !== true);
  return mergeSegments(kept, { spans, points: split.points }).map(({ span }) => span);
}

const arc = arcSpan({ center: { x: 6, y: 0 }, radius: 6, from: 0, sweep: Math.PI });
const dome = [arc, lineSpan(arc.end, arc.start)];

test('where stray lines came, an arc and a line are whole again, the arc bit for bit', () => {
  const whole = canonicalSpans(dome.map((span) => ({ span, source: 0 }))).map(({ span }) => span);
  expect(healed(dome, [line(4, -3, 4, 1)], [line(7, 5, 7, 12)])).toEqual(whole);
});

test('a line that divides the dome leaves it cut', () => {
  const spans = healed(dome, [line(4, -3, 4, 20)]);
  // The arc and the chord in two each, and the line inside.
  expect(spans).toHaveLength(5);
  const inside = Math.sqrt(36 - 4);
  expect(spans.reduce((sum, each) => sum + spanLength(each), 0)).toBeCloseTo(6 * Math.PI + 12 + inside, 9);
});

test('where another outline meets it, the border stays cut', () => {
  const other = [line(4, 0, 2, -5), line(2, -5, 7, -5), line(7, -5, 4, 0)];
  expect(healed(dome, other)).toHaveLength(6);
});

test('where another curve runs along it, the border stays cut at its ends', () => {
  // From 3 to 5 both curves run: three segments of the chord.
  const box = [line(3, 0, 5, 0), line(5, 0, 5, -4), line(5, -4, 3, -4), line(3, -4, 3, 0)];
  expect(healed(dome, box)).toHaveLength(1 + 3 + 3);
});
