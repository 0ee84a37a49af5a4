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

  test('a gap between two covers is a part of its own from a speck on, 0.001 mm', () => {
    expect(lengths(span, [line(0, 4), line(4.0005, 10)])).toEqual([
      ['covered', 4],
      ['covered', 6],
    ]);
    expect(lengths(span, [line(0, 4), line(4.0015, 10)])).toEqual([
      ['covered', 4],
      ['bare', 0.0015],
      ['covered', 5.9985],
    ]);
    // The speck goes to the cover that follows: no place is in none.
    expect(coverSpan(span, [line(0, 4), line(4.0005, 10)])[1]?.span.start).toEqual({ x: 4, y: 3 });
    // A cover that only goes a speck beyond another adds nothing, nor does one that is a speck long.
    expect(lengths(span, [line(1, 4), line(2, 4.0005), line(7, 7.0005)])).toEqual([
      ['bare', 1],
      ['covered', 3],
      ['bare', 6],
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

  test('is cut off centre where covers begin and end in it, each part on the arc itself', () => {
    const place = (deg: number) => ({
      x: expect.closeTo(-4 + 9 * Math.cos(deg * degree), 9),
      y: expect.closeTo(1 + 9 * Math.sin(deg * degree), 9),
    });
    expect(coverSpan(of(20, 100), [of(-10, 42), of(50, 40)])).toMatchObject([
      { isCovered: true, span: { start: place(20), end: place(32), sweep: expect.closeTo(12 * degree, 9) } },
      { isCovered: false, span: { start: place(32), end: place(50), sweep: expect.closeTo(18 * degree, 9) } },
      { isCovered: true, span: { start: place(50), end: place(90), sweep: expect.closeTo(40 * degree, 9) } },
      {
        isCovered: false,
        span: { start: place(90), end: place(120), sweep: expect.closeTo(30 * degree, 9) },
      },
    ]);
  });

  test('across the start of the angles, where shares of a cover wind back or forth by a turn', () => {
    for (const turn of [-360, 0, 360]) {
      expect(degrees(of(150, 100), [of(190 + turn, 33)])).toEqual([
        ['bare', 40],
        ['covered', 33],
        ['bare', 27],
      ]);
      expect(degrees(of(-170, -60), [of(-200 + turn, -25)])).toEqual([
        ['bare', 30],
        ['covered', 25],
        ['bare', 5],
      ]);
    }
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

test.each([1, -1])('a cover that begins behind an arc and comes round over its end, turning by %d', (way) => {
  const center = { x: 4, y: -2 };
  const span = arcSpan({ center, radius: 5, from: 0, sweep: 0.8 * way });
  const cover = arcSpan({ center, radius: 5, from: -2.5 * way, sweep: -Math.PI * way });
  const [bare, covered, ...more] = coverSpan(span, [cover]);
  expect(more).toEqual([]);
  expect([bare?.isCovered, covered?.isCovered]).toEqual([false, true]);
  // Half a turn back from −2.5 is π − 2.5 ahead of the start.
  expect(bare?.span).toMatchObject({ sweep: expect.closeTo((Math.PI - 2.5) * way, 9) });
  expect(covered?.span).toMatchObject({ sweep: expect.closeTo((0.8 - Math.PI + 2.5) * way, 9) });
  expect(bare?.span.start).toBe(span.start);
  expect(covered?.span.end).toBe(span.end);
});

test('a part of a line is a line and nothing else', () => {
  expect(coverSpan(line(0, 10), [line(4, 12)])).toEqual([
    { span: line(0, 4), isCovered: false },
    { span: line(4, 10), isCovered: true },
  ]);
});
