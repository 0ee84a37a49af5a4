/** What a drawing came to, as measures that do not depend on how its curves were cut. */
import type { Drawing } from '#drawing/drawing.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { loopArea, spansLength } from '#geometry/span.ts';

export interface DrawingMeasure {
  readonly curves: number;
  readonly closed: number;
  readonly length: number;
  /** Area of the closed curves, each counted positive. */
  readonly area: number;
  readonly box: Box;
}

export function measureDrawing({ curves }: Drawing): DrawingMeasure {
  const closed = curves.filter((curve) => curve.closed);
  return {
    curves: curves.length,
    closed: closed.length,
    length: curves.reduce((sum, { spans }) => sum + spansLength(spans), 0),
    area: closed.reduce((sum, { spans }) => sum + Math.abs(loopArea(spans)), 0),
    box: boxOfSpans(curves.flatMap(({ spans }) => spans)),
  };
}

/** Each span starts where the last one ends, and no span turns by more than half a turn or has no length. */
export function brokenChains({ curves }: Drawing): string[] {
  return curves.flatMap(({ kind, line, spans }) => {
    const faults: string[] = [];
    for (const [n, span] of spans.entries()) {
      const last = spans[n - 1];
      if (last !== undefined && (last.end.x !== span.start.x || last.end.y !== span.start.y)) {
        faults.push(`${kind} of line ${line} is torn before span ${n}`);
      }
      if (span.kind === 'arc' && !(Math.abs(span.sweep) <= Math.PI && span.sweep !== 0)) {
        faults.push(`${kind} of line ${line} has a sweep of ${span.sweep}`);
      }
      if (spansLength([span]) === 0) faults.push(`${kind} of line ${line} has a span without length`);
    }
    return faults;
  });
}
