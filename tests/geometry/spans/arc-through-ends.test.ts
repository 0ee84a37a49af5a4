import { expect, test } from 'vitest';
import { distance } from '#geometry/point.ts';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import { throughEnds } from '#geometry/spans/arc-through-ends.ts';

const arc = arcSpan({ center: { x: 3, y: 7 }, radius: 8, from: 0.4, sweep: -1.9 });

test('a line, and an arc whose ends lie on its circle, are the very same', () => {
  const line = lineSpan({ x: 0, y: 0 }, { x: 2, y: 5 });
  expect(throughEnds(line)).toBe(line);
  expect(throughEnds(arc)).toBe(arc);
});

test.each(['start', 'end'] as const)(
  'an arc whose %s stands 0.0003 mm off gets a circle through both',
  (which) => {
    const end = arc[which];
    const off = { ...arc, [which]: { x: end.x + 0.0003, y: end.y } };
    const through = throughEnds(off);
    if (through.kind !== 'arc') throw new Error('an arc stays one');
    expect(through.start).toBe(off.start);
    expect(through.end).toBe(off.end);
    expect(through.sweep).toBeCloseTo(-1.9, 12);
    expect(distance(through.start, through.center)).toBeCloseTo(through.radius, 11);
    expect(distance(through.end, through.center)).toBeCloseTo(through.radius, 11);
    expect(through.radius).not.toBe(8);
  },
);
