/** Neighbours of a chain on one line or circle made one. */
import { expect, test } from 'vitest';
import { joinSpans } from '#drawing/curves/join-spans.ts';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';

const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const center = { x: 2, y: -3 };
/** Arcs of R 5 one after the other from an angle on. */
const arcs = (from: number, ...sweeps: readonly number[]): Span[] =>
  sweeps.map((sweep, n) =>
    arcSpan({
      center,
      radius: 5,
      from: from + sweeps.slice(0, n).reduce((sum, each) => sum + each, 0),
      sweep,
    }),
  );
const sweeps = (spans: readonly Span[]) => spans.map((span) => (span.kind === 'arc' ? span.sweep : 0));

test('lines that run on are one, those that turn or come back are not', () => {
  expect(joinSpans([line(1, 2, 4, 4), line(4, 4, 10, 8), line(10, 8, 13, 10)])).toEqual([line(1, 2, 13, 10)]);
  const bent = [line(1, 2, 4, 4), line(4, 4, 10, 8.001)];
  expect(joinSpans(bent)).toEqual(bent);
  const back = [line(1, 2, 10, 8), line(10, 8, 4, 4)];
  expect(joinSpans(back)).toEqual(back);
  const before = [line(4, 4, 10, 8), line(10, 8, 1, 2)];
  expect(joinSpans(before)).toEqual(before);
});

test('arcs of one circle are equal ones, as few as half a turn each allows', () => {
  const two = arcs(0.4, 0.3, 1.1, 0.9);
  const [one, ...more] = joinSpans(two);
  expect(more).toEqual([]);
  expect(one).toMatchObject({ radius: expect.closeTo(5, 9), sweep: expect.closeTo(2.3, 9) });
  expect([one?.start, one?.end]).toEqual([two[0]?.start, two[2]?.end]);
  expect(sweeps(joinSpans(arcs(0.4, 2.5, 1.1, 0.9)))).toEqual([
    expect.closeTo(2.25, 9),
    expect.closeTo(2.25, 9),
  ]);
  expect(sweeps(joinSpans(arcs(1, -2, -2.1)))).toEqual([expect.closeTo(-2.05, 9), expect.closeTo(-2.05, 9)]);
  expect(sweeps(joinSpans(arcs(1, -1, -2.141_592_653_589_793)))).toEqual([expect.closeTo(-Math.PI, 9)]);
});

test('the joint of two equal arcs lies on their circle', () => {
  const [first, second] = joinSpans(arcs(0.4, 2.5, 1.1, 0.9));
  const at = 0.4 + 2.25;
  const joint = { x: expect.closeTo(2 + 5 * Math.cos(at), 9), y: expect.closeTo(-3 + 5 * Math.sin(at), 9) };
  expect([first?.end, second?.start]).toEqual([joint, joint]);
});

test('other radii, centres and turnings stay apart, and a line between ends a run', () => {
  const [first] = arcs(0, 0.5);
  for (const other of [
    arcSpan({ center, radius: 5.01, from: 0.5, sweep: 0.7 }),
    arcSpan({ center: { x: 2.01, y: -3 }, radius: 5, from: 0.5, sweep: 0.7 }),
    arcSpan({ center, radius: 5, from: 0.5, sweep: -0.7 }),
  ]) {
    expect(joinSpans([first as Span, other])).toEqual([first, other]);
  }
  const chain = [...arcs(0, 0.5), line(6, 0, 9, 1), ...arcs(1, 0.6)];
  expect(joinSpans(chain)).toEqual(chain);
  expect(joinSpans([line(0, 0, 4, 1), ...arcs(0, 0.5), line(4, 1, 8, 2)])).toHaveLength(3);
});
