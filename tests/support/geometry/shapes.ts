/** The plain shapes that tests are made of, as exact loops: outer ones counter-clockwise. */
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { arcSpan, type Loop, lineSpan, type Path, type Span } from '#geometry/span.ts';

/** Four lines, counter-clockwise from the corner (x0, y0). */
export function rectangle(x0: number, y0: number, x1: number, y1: number): Loop {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

/** Lines through the points and back to the first. */
export function polygon(points: readonly (readonly [number, number])[]): Loop {
  return points.map(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return lineSpan({ x, y }, { x: nextX, y: nextY });
  });
}

/** Lines through the points, open at both ends. */
export function openLine(...points: readonly (readonly [number, number])[]): Path {
  const spans = points.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = points[i] ?? [x, y];
    return lineSpan({ x: fromX, y: fromY }, { x, y });
  });
  return { closed: false, spans };
}

/** Four lines and four quarter arcs, counter-clockwise; every joint's two ends are the same point, bit for bit. */
export function roundedRectangle(x0: number, y0: number, x1: number, y1: number, radius: number): Loop {
  const corners = [
    {
      center: { x: x1 - radius, y: y0 + radius },
      from: { x: x1 - radius, y: y0 },
      to: { x: x1, y: y0 + radius },
    },
    {
      center: { x: x1 - radius, y: y1 - radius },
      from: { x: x1, y: y1 - radius },
      to: { x: x1 - radius, y: y1 },
    },
    {
      center: { x: x0 + radius, y: y1 - radius },
      from: { x: x0 + radius, y: y1 },
      to: { x: x0, y: y1 - radius },
    },
    {
      center: { x: x0 + radius, y: y0 + radius },
      from: { x: x0, y: y0 + radius },
      to: { x: x0 + radius, y: y0 },
    },
  ];
  return corners.flatMap((corner, i): Span[] => {
    const before = corners[(i + 3) % 4] ?? corner;
    return [
      lineSpan(before.to, corner.from),
      { kind: 'arc', start: corner.from, end: corner.to, center: corner.center, radius, sweep: Math.PI / 2 },
    ];
  });
}

/** Two half arcs, counter-clockwise from the right; they share both ends bit for bit. */
export function circle(x: number, y: number, radius: number): Loop {
  const center = { x, y };
  const right = { x: x + radius, y };
  const left = { x: x - radius, y };
  const upper = { ...arcSpan({ center, radius, from: 0, sweep: Math.PI }), start: right, end: left };
  return [upper, { ...upper, start: left, end: right }];
}

/** Every span with the number of its loop as source. */
export function sourced(loops: readonly Loop[]): SourcedSpan[] {
  return loops.flatMap((loop, source) => loop.map((span) => ({ span, source })));
}
