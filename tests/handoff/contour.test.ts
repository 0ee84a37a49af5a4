import { describe, expect, it } from 'vitest';
import { loopArea, type Path } from '#geometry/span.ts';
import { contourOfLoop, contourOfPath, pathOfContour } from '#handoff/contour.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

describe('contours of the hand-off files', () => {
  const paths: readonly Path[] = handMadePlan.stages.flatMap(({ lines }) => lines);

  it('come back as the same curves, closed or open', () => {
    for (const path of paths) {
      const back = pathOfContour(contourOfPath(path));
      expect(back.closed).toBe(path.closed);
      expect(curveGap(back.spans, path.spans)).toBeLessThan(1e-12);
    }
  });

  it('keep a full circle: two half turns, area πr²', () => {
    const [circle = []] = handMadePlan.stages[0]?.piece ?? [];
    expect(loopArea(pathOfContour(contourOfLoop(circle)).spans)).toBeCloseTo(Math.PI * 12.5 ** 2, 9);
  });

  it('state no vertex twice, closed or open, and none of a path without spans', () => {
    const spans = rectangle(2, 3, 14, 10);
    expect(contourOfPath({ closed: true, spans }).vertices).toEqual([
      [2, 3, 0],
      [14, 3, 0],
      [14, 10, 0],
      [2, 10, 0],
    ]);
    expect(contourOfPath({ closed: false, spans: spans.slice(0, 2) }).vertices).toEqual([
      [2, 3, 0],
      [14, 3, 0],
      [14, 10, 0],
    ]);
    expect(contourOfPath({ closed: false, spans: [] })).toEqual({ closed: false, vertices: [] });
  });

  it('take a repeated vertex and a bulge too small to bend for what they are', () => {
    const back = pathOfContour({
      closed: true,
      vertices: [
        [0, 0, 0],
        [0, 0, 0.5],
        [5, 0, 1e-300],
        [5, 5, 0],
      ],
    });
    expect(back.spans.map(({ kind }) => kind)).toEqual(['arc', 'line', 'line']);
  });
});
