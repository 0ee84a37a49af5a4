/** Outlines that random parts are made of, counter-clockwise, beyond the plain ones of `shapes.ts`. */
import type { Point } from '#geometry/point.ts';
import { arcSpan, type Loop, lineSpan, type Span, spanFromBulge } from '#geometry/span.ts';
import { polygon } from '#support/geometry/shapes.ts';
import type { Dice } from './dice.ts';

/** A polygon of corners at even angles and uneven distances. */
export function star(dice: Dice, center: Point, { least, most }: { least: number; most: number }): Loop {
  const corners = dice.whole(3, 9);
  const turn = dice.between(0, 2);
  return polygon(
    Array.from({ length: corners }, (_, i) => {
      const angle = turn + (2 * Math.PI * (i + dice.between(-0.2, 0.2))) / corners;
      const away = dice.between(least, most);
      return [center.x + away * Math.cos(angle), center.y + away * Math.sin(angle)] as const;
    }),
  );
}

/** Sides bent in or out by up to `most` of bulge. */
export function bent(dice: Dice, loop: Loop, most: number): Loop {
  return loop.map(({ start, end }): Span => {
    const bulge = dice.between(-most, most);
    return Math.abs(bulge) < 0.02 ? lineSpan(start, end) : spanFromBulge(start, end, bulge);
  });
}

/** The polygon with its corners cut off by tangent arcs of the radius, where both sides have room for it. */
export function filleted(loop: Loop, radius: number): Loop {
  const cuts = loop.map(({ start: corner, end: next }, i) => {
    const before = (loop[(i + loop.length - 1) % loop.length] ?? { start: corner }).start;
    const [a, b] = [unit(corner, before), unit(corner, next)];
    const half = Math.acos(Math.min(1, Math.max(-1, a.x * b.x + a.y * b.y))) / 2;
    const back = radius / Math.tan(half);
    const room = Math.min(length(corner, before), length(corner, next)) / 2.1;
    if (!(back < room) || half > 1.55) return { in: corner, out: corner, bulge: 0 };
    const side = Math.sign(a.y * b.x - a.x * b.y);
    return {
      in: { x: corner.x + a.x * back, y: corner.y + a.y * back },
      out: { x: corner.x + b.x * back, y: corner.y + b.y * back },
      bulge: -side * Math.tan((Math.PI - 2 * half) / 4),
    };
  });
  return cuts.flatMap((cut, i): Span[] => {
    const next = cuts[(i + 1) % cuts.length] ?? cut;
    const arc = cut.bulge === 0 ? [] : [spanFromBulge(cut.in, cut.out, cut.bulge)];
    return [...arc, lineSpan(cut.out, next.in)];
  });
}

function unit(from: Point, to: Point): Point {
  const far = length(from, to);
  return { x: (to.x - from.x) / far, y: (to.y - from.y) / far };
}

function length(from: Point, to: Point): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** A slot: two lines and two half circles, from one middle to the other. */
export function slot(from: Point, to: Point, radius: number): Loop {
  const { x, y } = unit(from, to);
  const at = (point: Point, side: number): Point => ({
    x: point.x + side * y * radius,
    y: point.y - side * x * radius,
  });
  return [
    lineSpan(at(from, 1), at(to, 1)),
    { ...halfTurn(to, radius), start: at(to, 1), end: at(to, -1) },
    lineSpan(at(to, -1), at(from, -1)),
    { ...halfTurn(from, radius), start: at(from, -1), end: at(from, 1) },
  ];
}

function halfTurn(center: Point, radius: number) {
  return arcSpan({ center, radius, from: 0, sweep: Math.PI });
}

/** A closed border through the points: each with the bulge of the way on from it. */
export function chain(vertices: readonly (readonly [x: number, y: number, bulge?: number])[]): Loop {
  return vertices.map(([x, y, bulge = 0], i) => {
    const [nextX, nextY] = vertices[(i + 1) % vertices.length] ?? [x, y];
    const [start, end] = [
      { x, y },
      { x: nextX, y: nextY },
    ];
    return bulge === 0 ? lineSpan(start, end) : spanFromBulge(start, end, bulge);
  });
}
