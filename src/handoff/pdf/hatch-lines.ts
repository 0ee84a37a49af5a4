/**
 * Hatching as plain lines, so that every reader and plotter shows it alike. Lines stand at whole steps from the origin, so the
 * hatch of two neighbours runs on. Arcs are followed to a hundredth of a millimetre. Cost: edges plus crossings.
 */

import type { Point } from '#geometry/point.ts';
import { type Loop, pointAlong, type Span } from '#geometry/span.ts';
import { HATCH_SAGITTA } from '#geometry/tolerances.ts';
import { acos } from '#maths/arc-cosine.ts';
import { cos as cosine, sin as sine } from '#maths/sine.ts';

export interface HatchStyle {
  /** mm between two lines. */
  readonly spacing: number;
  /** Of the lines, counter-clockwise from x, radians. */
  readonly angle: number;
}

/** Ends of the hatch lines inside the loops, even-odd. */
export function hatchLines(loops: readonly Loop[], { spacing, angle }: HatchStyle): [Point, Point][] {
  const cos = cosine(angle);
  const sin = sine(angle);
  const crossings = new Map<number, number[]>();
  for (const loop of loops) {
    for (const span of loop) {
      let [from, ...rest] = chordEnds(span);
      for (const to of rest) {
        if (from === undefined) break;
        cross(from, to);
        from = to;
      }
    }
  }

  /** Half-open: an edge counts the lines at its lower end, not those at its upper, so that a corner counts once. */
  function cross(a: Point, b: Point): void {
    const va = (a.y * cos - a.x * sin) / spacing;
    const vb = (b.y * cos - b.x * sin) / spacing;
    const ua = a.x * cos + a.y * sin;
    const ub = b.x * cos + b.y * sin;
    for (let line = Math.ceil(Math.min(va, vb)); line < Math.max(va, vb); line++) {
      const at = ua + ((ub - ua) * (line - va)) / (vb - va);
      const list = crossings.get(line);
      if (list === undefined) crossings.set(line, [at]);
      else list.push(at);
    }
  }

  const lines: [Point, Point][] = [];
  for (const [line, places] of [...crossings].sort(([a], [b]) => a - b)) {
    const v = line * spacing;
    const place = (u: number): Point => ({ x: u * cos - v * sin, y: u * sin + v * cos });
    places.sort((a, b) => a - b);
    for (let i = 0; i + 1 < places.length; i += 2) {
      lines.push([place(places[i] ?? 0), place(places[i + 1] ?? 0)]);
    }
  }
  return lines;
}

/** Start, places in between, end; a full loop's ends meet exactly. */
function chordEnds(span: Span): Point[] {
  if (span.kind === 'line') return [span.start, span.end];
  const step = 2 * acos(Math.max(0, 1 - HATCH_SAGITTA / span.radius));
  const count = Math.max(1, Math.ceil(Math.abs(span.sweep) / Math.max(step, 0.05)));
  const ends = [span.start];
  for (let i = 1; i < count; i++) ends.push(pointAlong(span, i / count));
  ends.push(span.end);
  return ends;
}
