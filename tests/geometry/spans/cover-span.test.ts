import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arcSpan, lineSpan, reverseSpan, type Span, spanLength } from '#geometry/span.ts';
import { coverSpan } from '#geometry/spans/cover-span.ts';

const line = (x0: number, x1: number, y = 3) => lineSpan({ x: x0, y }, { x: x1, y });
const lengths = (span: Span, covers: readonly Span[]) =>
  coverSpan(span, covers).map(({ span: part, isCovered }) => [
    isCovered ? 'covered' : 'bare',
    Math.round(spanLength(part) * 1e6) / 1e6,
  ]);

describe('a line of 10', () => {
  const span = line(0, 10);

  test('that nothing covers stays the very same, one covered all along too', () => {
    expect(coverSpan(span, [])).toEqual([{ span, isCovered: false }]);
    expect(coverSpan(span, [line(-2, 14)])).toEqual([{ span, isCovered: true }]);
    expect(coverSpan(span, [line(-2, 14)])[0]?.span).toBe(span);
  });

  test('is cut where covers begin and end, whichever way they run', () => {
    expect(lengths(span, [line(5, 2)])).toEqual([
      ['bare', 2],
      ['covered', 3],
      ['bare', 5],
    ]);
    expect(lengths(span, [line(9, 12), line(-3, 1)])).toEqual([
      ['covered', 1],
      ['bare', 8],
      ['covered', 1],
    ]);
  });

  test('overlapping covers are reported in stretches that follow on each other', () => {
    expect(lengths(span, [line(1, 6), line(4, 8), line(5, 7)])).toEqual([
      ['bare', 1],
      ['covered', 5],
      ['covered', 2],
      ['bare', 2],
    ]);
  });

  test('is not covered by a line beside it, nor by one that only touches its end', () => {
    expect(lengths(span, [line(2, 5, 3.0005), line(10, 13)])).toEqual([['bare', 10]]);
    // Nothing shorter than a speck of 0.001 mm is a part of its own.
    expect(lengths(span, [line(9.9995, 13)])).toEqual([['bare', 10]]);
    expect(lengths(span, [line(-4, 9.9995)])).toEqual([['covered', 10]]);
  });
});

describe('an arc from 20° by 100°, radius 9', () => {
  const degree = Math.PI / 180;
  const of = (fromDeg: number, sweepDeg: number, radius = 9) =>
    arcSpan({ center: { x: -4, y: 1 }, radius, from: fromDeg * degree, sweep: sweepDeg * degree });
  const degrees = (span: Span, covers: readonly Span[]) =>
    coverSpan(span, covers).map(({ span: part, isCovered }) => [
      isCovered ? 'covered' : 'bare',
      Math.round((spanLength(part) / 9 / degree) * 1e6) / 1e6,
    ]);

  test.each([
    ['forwards', of(50, 40)],
    ['backwards', of(90, -40)],
  ])('is covered from 50° to 90° by an arc run %s', (_, cover) => {
    expect(degrees(of(20, 100), [cover])).toEqual([
      ['bare', 30],
      ['covered', 40],
      ['bare', 30],
    ]);
    expect(degrees(reverseSpan(of(10, 110)), [cover])).toEqual([
      ['bare', 30],
      ['covered', 40],
      ['bare', 40],
    ]);
  });

  test('is covered at both ends by one that goes round the far side', () => {
    expect(degrees(of(20, 170), [of(100, 180), of(280, 120)])).toEqual([
      ['covered', 20],
      ['bare', 60],
      ['covered', 90],
    ]);
  });

  test('is covered by none of another radius, and by no line', () => {
    expect(degrees(of(20, 100), [of(50, 40, 9.01), line(-20, 20, 10)])).toEqual([['bare', 100]]);
  });
});

test('parts add up to the span, covered ones to what overlaps (random)', () => {
  const cover = fc.tuple(fc.integer({ min: -20, max: 120 }), fc.integer({ min: 1, max: 60 }));
  fc.assert(
    fc.property(fc.array(cover, { maxLength: 5 }), (covers) => {
      const span = line(0, 100);
      const parts = coverSpan(
        span,
        covers.map(([from, length]) => line(from, from + length)),
      );
      const total = (isAsked: (isCovered: boolean) => boolean) =>
        parts.reduce((sum, part) => sum + (isAsked(part.isCovered) ? spanLength(part.span) : 0), 0);
      expect(total(() => true)).toBeCloseTo(100, 9);
      const millimetres = Array.from({ length: 100 }, (_, at) =>
        covers.some(([from, length]) => from <= at && at + 1 <= from + length),
      );
      expect(total((isCovered) => isCovered)).toBeCloseTo(millimetres.filter(Boolean).length, 9);
    }),
  );
});
