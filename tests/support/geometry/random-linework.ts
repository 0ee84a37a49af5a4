/** Random linework for property tests: on a coarse grid, where everything touches, overlaps and is tangent, or anywhere. */
import fc from 'fast-check';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { arcSpan, type Loop, lineSpan, type Span } from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

/** A measure: multiples of 5 up to 60 on the grid, any number between otherwise. */
function measure(onGrid: boolean, least: number, most: number): fc.Arbitrary<number> {
  if (onGrid) return fc.integer({ min: Math.ceil(least / 5), max: most / 5 }).map((steps) => steps * 5);
  return between(least, most);
}

/** Six decimals, and no liking for round numbers. */
function between(least: number, most: number): fc.Arbitrary<number> {
  return fc
    .noBias(fc.integer({ min: Math.ceil(least * 1e6), max: Math.floor(most * 1e6) }))
    .map((value) => value / 1e6);
}

/** A closed outline: rectangle, rounded rectangle, circle, or a polygon that may cross itself. */
export function anyOutline(onGrid: boolean): fc.Arbitrary<Loop> {
  const at = measure(onGrid, 0, 60);
  const size = measure(onGrid, 5, 40);
  const box = fc.record({ x: at, y: at, width: size, height: size });
  const points = fc.array(fc.tuple(at, at), { minLength: 3, maxLength: 5 });
  return fc.oneof(
    box.map(({ x, y, width, height }) => rectangle(x, y, x + width, y + height)),
    fc.tuple(box, fc.constantFrom(0.2, 0.4)).map(([{ x, y, width, height }, share]) => {
      const radius = onGrid ? 2.5 : share * Math.min(width, height);
      return roundedRectangle(x, y, x + width, y + height, radius).filter(hasLength);
    }),
    fc.tuple(at, at, size).map(([x, y, radius]) => circle(x, y, radius / 2)),
    points.map((corners) => polygon(corners).filter(hasLength)).filter((loop) => loop.length > 2),
  );
}

/** A loose line, or an arc of up to half a turn. */
function anyStray(onGrid: boolean): fc.Arbitrary<Span> {
  const at = measure(onGrid, 0, 60);
  const quarter = onGrid ? fc.integer({ min: 0, max: 3 }) : between(0, 4);
  const turn = onGrid ? fc.constantFrom(1, 2, -1, -2) : between(0.05, 2);
  return fc.oneof(
    fc
      .tuple(at, at, at, at)
      .map(([x0, y0, x1, y1]) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 }))
      .filter(hasLength),
    fc.tuple(at, at, measure(onGrid, 5, 30), quarter, turn).map(([x, y, radius, from, sweep]) =>
      arcSpan({
        center: { x, y },
        radius,
        from: (from * Math.PI) / 2,
        sweep: (sweep * Math.PI) / 2,
      }),
    ),
  );
}

/** Outlines first, then strays; each its own source. */
export function anyLinework(onGrid: boolean): fc.Arbitrary<SourcedSpan[]> {
  const outlines = fc.array(anyOutline(onGrid), { minLength: 1, maxLength: 6 });
  const strays = fc.array(anyStray(onGrid), { maxLength: 4 });
  return fc
    .tuple(outlines, strays)
    .map(([loops, spans]) =>
      [...loops, ...spans.map((span) => [span])].flatMap((loop, source) =>
        loop.map((span) => ({ span, source })),
      ),
    );
}

function hasLength({ start, end }: Span): boolean {
  return Math.hypot(end.x - start.x, end.y - start.y) > 0.01;
}
