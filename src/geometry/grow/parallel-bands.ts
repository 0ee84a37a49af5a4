/**
 * The band along closed borders without a grid, where it takes none: between the parallels on either side of each, if none of
 * them comes as near to any other span as the band reaches (`parallel-loops.ts`). Linear in spans, but for those near each other.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea, reverseSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { inHalfTurns } from '#geometry/spans/half-turns.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { parallelsApart } from './parallel-loops.ts';

/**
 * @param spans in any order and either direction
 * @param by mm, more than 0
 * @returns outer loops, then holes; undefined where the spans do not all close, or it takes the grid to tell
 */
export function parallelBands(spans: readonly Span[], by: number): Loop[] | undefined {
  const borders = closedBorders(spans);
  if (borders === undefined) return undefined;
  const outside = parallelsApart(borders.map(reverseSpans), by);
  const inside = outside && parallelsApart(borders, by);
  if (outside === undefined || inside === undefined) return undefined;
  // Each parallel has its border on the right, and the band with it.
  return [...outside, ...inside].map((loop) => reverseSpans(inFewSpans(loop)));
}

function inFewSpans(loop: Loop): Loop {
  return inHalfTurns(wholeSpans(loop).map(({ span }) => span));
}

/** Anticlockwise, in the order of their first spans; undefined unless just two spans meet at every end. */
function closedBorders(spans: readonly Span[]): Loop[] | undefined {
  const meeting = spansByEnd(spans);
  const taken = new Set<number>();
  const borders: Loop[] = [];
  for (const first of spans.keys()) {
    if (taken.has(first)) continue;
    const border: Span[] = [];
    for (let at = first; !taken.has(at); ) {
      taken.add(at);
      const [span, from] = [itemAt(spans, at), border.at(-1)?.end];
      const onward = from === undefined || isSame(span.start, from) ? span : reverseSpan(span);
      border.push(onward);
      const [one, other, ...more] = meeting(onward.end);
      if (one === undefined || other === undefined || one === other || more.length > 0) return undefined;
      at = one === at ? other : one;
    }
    borders.push(loopArea(border) < 0 ? reverseSpans(border) : border);
  }
  return borders;
}

function isSame(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** Numbers of the spans that end or begin at a point. */
function spansByEnd(spans: readonly Span[]): (point: Point) => readonly number[] {
  const byX = new Map<number, Map<number, number[]>>();
  spans.forEach(({ start, end }, number) => {
    for (const { x, y } of [start, end]) {
      const byY = byX.get(x) ?? new Map<number, number[]>();
      byX.set(x, byY);
      const numbers = byY.get(y);
      if (numbers === undefined) byY.set(y, [number]);
      else numbers.push(number);
    }
  });
  return ({ x, y }) => byX.get(x)?.get(y) ?? [];
}
