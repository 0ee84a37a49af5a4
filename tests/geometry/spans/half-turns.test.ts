import { expect, test } from 'vitest';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';
import { inHalfTurns } from '#geometry/spans/half-turns.ts';

const ending = lineSpan({ x: -4, y: 3 }, { x: 7, y: 3 });
const arcOf = (sweep: number) => arcSpan({ center: { x: 2, y: -1 }, radius: 5, from: 0.3, sweep });
const sweeps = (spans: readonly Span[]) => spans.map((span) => (span.kind === 'arc' ? span.sweep : 0));

test.each([
  ['three quarters of a turn in two', -1.5 * Math.PI, 2],
  ['a whole turn in two', 2 * Math.PI, 2],
  ['half a turn as it is', -Math.PI, 1],
  ['half a turn and rounding as it is', Math.PI + 1e-12, 1],
])('%s, end to end, and lines left alone', (_, sweep, count) => {
  const arc = arcOf(sweep);
  const cut = inHalfTurns([arc, ending]);
  expect(cut).toHaveLength(count + 1);
  expect(cut.at(-1)).toBe(ending);
  expect(cut[0]?.start).toBe(arc.start);
  expect(cut[count - 1]?.end).toBe(arc.end);
  for (const [at, span] of cut.slice(1, count).entries()) expect(span.start).toBe(cut[at]?.end);
  expect(sweeps(cut).reduce((sum, each) => sum + each, 0)).toBeCloseTo(sweep, 12);
  for (const each of sweeps(cut)) expect(Math.abs(each)).toBeLessThan(Math.PI + 1e-9);
});
