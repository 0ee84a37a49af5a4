/** Faces against the polygonizer of JSTS 2.12.1 (a port of the JTS Topology Suite), which shares no code with ours. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span } from '#geometry/span.ts';
import { SILENT_JOIN } from '#geometry/tolerances.ts';
import { polygonizedAreas } from '#oracle/polygonized-areas.ts';
import { anyLinework } from '#support/geometry/random-linework.ts';

/** Chords for an arc. Those of half a turn of the greatest radius, 30 mm, leave out 0.25 mm². */
const CHORDS = 96;

function chordsOf(span: Span): Point[] {
  if (span.kind === 'line') return [span.start, span.end];
  const inner = Array.from({ length: CHORDS - 1 }, (_, i) => pointAlong(span, (i + 1) / CHORDS));
  return [span.start, ...inner, span.end];
}

/**
 * False where the oracle has no answer. Faces are compared from the largest down, and one that only the one side has must
 * be as small as the difference that is allowed: it may be lost between arc and chord.
 */
function expectSameFaces(spans: readonly SourcedSpan[], allowed: number): boolean {
  const { arrangement } = arrange(spans, { joinTolerance: 0 });
  const theirs = polygonizedAreas(spans.map(({ span }) => chordsOf(span)));
  if (theirs === undefined) return false;
  const ours = arrangement.faces.map(({ area }) => area).sort((a, b) => b - a);
  for (let i = 0; i < Math.max(ours.length, theirs.length); i++) {
    expect(Math.abs((ours[i] ?? 0) - (theirs[i] ?? 0))).toBeLessThan(allowed);
  }
  return true;
}

/** An end that misses a curve by a thousandth is joined by us, and left open by the oracle. */
function hasNearMiss(spans: readonly SourcedSpan[]): boolean {
  return spans.some(({ span }) =>
    [span.start, span.end].some((end) =>
      spans.some((other) => {
        const gap = distanceToSpan(other.span, end);
        return gap > 1e-9 && gap < 2 * SILENT_JOIN;
      }),
    ),
  );
}

/** Compares on random linework; nearly every drawing must have had an answer to compare with. */
function compareOn(
  linework: fc.Arbitrary<SourcedSpan[]>,
  { runs, allowed }: { runs: number; allowed: number },
): void {
  let answers = 0;
  fc.assert(
    fc.property(linework, (spans) => {
      if (expectSameFaces(spans, allowed)) answers++;
    }),
    { numRuns: runs },
  );
  expect(answers).toBeGreaterThan(0.95 * runs);
}

test('lines and arcs anywhere: as many faces, of the same areas', { tags: ['long'] }, () => {
  const anywhere = anyLinework(false).filter((spans) => !hasNearMiss(spans));
  compareOn(anywhere, { runs: 150, allowed: 0.4 });
});

test('lines on a coarse grid, touching, overlapping, doubled: as many faces, of the same areas', {
  tags: ['long'],
}, () => {
  const straight = anyLinework(true).map((spans) => spans.filter(({ span }) => span.kind === 'line'));
  compareOn(straight, { runs: 200, allowed: 1e-6 });
});
