/** Linework as suppliers send it: what is joined, what is left out, what is reported, and what it costs: nothing else. */
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';
import { circle, rectangle, roundedRectangle, sourced } from '#support/geometry/shapes.ts';

function line(x0: number, y0: number, x1: number, y1: number): Span {
  return lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
}

function loose(spans: readonly Span[]): SourcedSpan[] {
  return spans.map((span, source) => ({ span, source }));
}

function outcome(spans: readonly SourcedSpan[], joinTolerance = 0.05) {
  const { arrangement, trouble } = arrange(spans, { joinTolerance });
  return { arrangement, trouble, areas: arrangement.faces.slice(1).map(({ area }) => area) };
}

describe('gaps', () => {
  test('a corner that stops 0.03 mm short on both sides is joined where the lines cross', () => {
    const { trouble, areas } = outcome(
      loose([line(0, 0, 30, 0), line(30, 0, 30, 19.97), line(29.97, 20, 0, 20), line(0, 20, 0, 0)]),
    );
    expect(trouble).toEqual([
      {
        kind: 'joined-gap',
        sources: [1, 2],
        at: { x: 30, y: 20 },
        gap: expect.closeTo(0.03 * Math.SQRT2, 9),
      },
    ]);
    expect(areas).toEqual([600]);
  });

  test('a gap of 0.0008 mm is joined without a word, even with a join tolerance of 0', () => {
    const { trouble, areas } = outcome(
      loose([line(0, 0, 30, 0), line(30, 0.0008, 30, 20), line(30, 20, 0, 20), line(0, 20, 0, 0)]),
      0,
    );
    expect(trouble).toEqual([]);
    expect(areas).toEqual([600]);
  });

  test('a gap of 0.2 mm stays open, is reported once, and costs the outline', () => {
    const { trouble, areas } = outcome(
      loose([line(0, 0, 30, 0), line(30, 0.2, 30, 20), line(30, 20, 0, 20), line(0, 20, 0, 0)]),
    );
    expect(trouble.map(({ kind }) => kind)).toEqual(['open-gap', 'dangling']);
    expect(trouble[0]).toEqual({ kind: 'open-gap', sources: [0, 1], at: { x: 30, y: 0.1 }, gap: 0.2 });
    expect(areas).toEqual([]);
  });

  test('a web line that stops 0.04 mm short of the border is run on to it (T joint)', () => {
    const { trouble, areas } = outcome([
      ...sourced([rectangle(0, 0, 40, 20)]),
      { span: line(20, 0.04, 20, 19.98), source: 1 },
    ]);
    expect(trouble).toEqual([
      { kind: 'joined-gap', sources: [0, 1], at: { x: 20, y: 0 }, gap: expect.closeTo(0.04, 9) },
      {
        kind: 'joined-gap',
        sources: [0, 1],
        at: { x: 20, y: expect.closeTo(20, 9) },
        gap: expect.closeTo(0.02, 9),
      },
    ]);
    expect(areas).toEqual([expect.closeTo(400, 9), expect.closeTo(400, 9)]);
  });

  test('a stub on a side whose corner is joined meets the side where it comes to lie, and has no tail', () => {
    // The side drawn twice is no free end: the upper line is brought to its corner, and down to the stub with it.
    const { trouble } = outcome(
      loose([
        line(0, 0, 30, 0),
        line(30, 0, 30, 20),
        line(30, 20, 30, 0),
        line(30, 20.03, 0, 20),
        line(0, 20, 0, 0),
        line(15, 20, 15, 0),
      ]),
    );
    expect(trouble.map(({ kind }) => kind)).toEqual(['doubled', 'joined-gap']);
    expect(trouble[1]).toMatchObject({ at: { x: 30, y: 20 }, gap: expect.closeTo(0.03, 9) });
  });

  test('a fillet with a gap at its end keeps centre and radius; the line gives way', () => {
    const fillet = arcSpan({ center: { x: 25, y: 5 }, radius: 5, from: -Math.PI / 2, sweep: Math.PI / 2 });
    const { arrangement, trouble } = outcome(
      loose([line(0, 0, 24.97, 0), fillet, line(30, 5, 30, 20), line(30, 20, 0, 20), line(0, 20, 0, 0)]),
    );
    expect(trouble.map(({ kind }) => kind)).toEqual(['joined-gap']);
    const arcs = arrangement.edges.flatMap(({ span }) => (span.kind === 'arc' ? [span] : []));
    expect(arcs).toEqual([fillet]);
  });

  /** A quarter of an ellipse from (30, 0) to (0, 20), in lines of some length each, drawn up to a gap before its end. */
  function fineQuarter(step: number, gap: number): Span[] {
    const points = [{ x: 30, y: 0 }];
    for (let angle = 0.0001; angle < Math.PI / 2; angle += 0.0001) {
      const next = { x: 30 * Math.cos(angle), y: 20 * Math.sin(angle) };
      const last = points[points.length - 1] ?? next;
      if (next.x < gap) break;
      if (Math.hypot(next.x - last.x, next.y - last.y) >= step) points.push(next);
    }
    points.push({ x: gap, y: 20 * Math.sqrt(1 - (gap / 30) ** 2) });
    return points.slice(1).map((point, n) => lineSpan(points[n] ?? point, point));
  }

  test.each([
    [0.5, 0.03],
    [0.05, 0.03],
    [0.02, 0.045],
    [0.004, 0.045],
  ])(
    'a fine polyline in lines of %d mm that stops %d mm short is joined, however short its last line is',
    { tags: ['long'] },
    (step, gap) => {
      const { trouble, areas } = outcome([
        ...fineQuarter(step, gap).map((span) => ({ span, source: 0 })),
        { span: line(0, 20, 0, 0), source: 1 },
        { span: line(0, 0, 30, 0), source: 2 },
      ]);
      expect(trouble.map(({ kind }) => kind)).toEqual(['joined-gap']);
      expect(trouble[0]).toMatchObject({ sources: [0, 1], gap: expect.closeTo(gap, 4) });
      expect(areas).toEqual([expect.closeTo((Math.PI * 30 * 20) / 4, step > 0.1 ? 1 : 2)]);
    },
  );

  test('a fine polyline that ends in the air is not run on to its own last lines', () => {
    const hook = fineQuarter(0.02, 4).map((span) => ({ span, source: 0 }));
    const { trouble } = outcome(hook);
    expect(trouble.map(({ kind }) => kind)).toEqual(['dangling']);
  });

  test('a fine ring in lines of 0.02 mm that lacks 0.036 mm is closed', () => {
    const ring = Array.from({ length: 1570 }, (_, n) => ({
      x: 5 * Math.cos(n * 0.004),
      y: 5 * Math.sin(n * 0.004),
    }));
    const open = ring.slice(1).map((point, n) => ({ span: lineSpan(ring[n] ?? point, point), source: 7 }));
    const { trouble, areas } = outcome(open);
    expect(trouble.map(({ kind }) => kind)).toEqual(['joined-gap']);
    expect(areas).toEqual([expect.closeTo(25 * Math.PI, 2)]);
  });

  test('two lines that run past each other at a corner are not moved: what stands over is taken off', () => {
    const { arrangement, trouble } = outcome(
      loose([line(0, 0, 30, 0), line(30, 0, 30, 20.03), line(30.02, 20, 0, 20), line(0, 20, 0, 0)]),
    );
    expect(trouble).toEqual([
      { kind: 'dangling', sources: [1], at: { x: 30, y: 20.03 }, length: expect.closeTo(0.03, 9) },
      { kind: 'dangling', sources: [2], at: { x: 30.02, y: 20 }, length: expect.closeTo(0.02, 9) },
    ]);
    expect(arrangement.vertices).toContainEqual({ x: 30, y: 20 });
  });

  test('ends of two different outlines, each other not the nearest, stay with their own', () => {
    // The stray end at (30.04, 20) is nearer to the corner than the corner's own partner would be to it.
    const { areas } = outcome(
      loose([
        line(0, 0, 30, 0),
        line(30, 0, 30, 19.99),
        line(29.99, 20, 0, 20),
        line(0, 20, 0, 0),
        line(30.04, 20, 60, 20),
      ]),
    );
    expect(areas).toEqual([600]);
  });
});

describe('lines that border nothing', () => {
  test('a dangling line is left out and leaves no vertex behind', () => {
    const { arrangement, trouble } = outcome([
      ...sourced([rectangle(0, 0, 40, 20)]),
      { span: line(20, 0, 20, 8), source: 1 },
    ]);
    expect(trouble).toEqual([{ kind: 'dangling', sources: [1], at: { x: 20, y: 8 }, length: 8 }]);
    expect(arrangement.vertices).toHaveLength(4);
  });

  test('a line that crosses an outline: its two tails are reported, what lies between cuts the face', () => {
    const { trouble, areas } = outcome([
      ...sourced([rectangle(0, 0, 40, 20)]),
      { span: line(10, -3, 10, 25), source: 1 },
    ]);
    expect(trouble).toEqual([
      { kind: 'dangling', sources: [1], at: { x: 10, y: -3 }, length: 3 },
      { kind: 'dangling', sources: [1], at: { x: 10, y: 25 }, length: 5 },
    ]);
    expect(areas).toEqual([200, 600]);
  });

  test('a bridge between two outlines is left out, and both stay whole', () => {
    const { arrangement, trouble } = outcome([
      ...sourced([circle(0, 0, 5), circle(20, 0, 5)]),
      { span: line(0, 5, 20, 5), source: 2 },
    ]);
    expect(trouble).toEqual([{ kind: 'dangling', sources: [2], at: { x: 10, y: 5 }, length: 20 }]);
    expect(arrangement.edges.map(({ span }) => (span.kind === 'arc' ? Math.abs(span.sweep) : 0))).toEqual(
      Array.from({ length: 4 }, () => Math.PI),
    );
  });
});

describe('lines drawn too often', () => {
  test('an outline drawn twice, once reversed, counts once', () => {
    const outline = roundedRectangle(0, 0, 40, 20, 3);
    const again = outline.map((span) =>
      span.kind === 'line'
        ? lineSpan(span.end, span.start)
        : { ...span, start: span.end, end: span.start, sweep: -span.sweep },
    );
    const { arrangement, trouble } = outcome(sourced([outline, again]));
    expect(trouble).toEqual([{ kind: 'doubled', source: 1, other: 0, at: { x: 0, y: 10 } }]);
    expect(arrangement.edges.map(({ sources }) => sources)).toEqual(Array.from({ length: 8 }, () => [0, 1]));
  });

  test('a border that two closed bays share, or a line along one side, is no trouble', () => {
    const { trouble, areas } = outcome([
      ...sourced([rectangle(0, 0, 10, 10), rectangle(10, 0, 20, 10)]),
      { span: line(2, 0, 15, 0), source: 2 },
    ]);
    expect(trouble).toEqual([]);
    expect(areas).toEqual([100, 100]);
  });

  test('arcs of one circle that overlap in part are one circle', () => {
    const arc = (from: number, sweep: number) => arcSpan({ center: { x: 3, y: 4 }, radius: 10, from, sweep });
    const { arrangement, trouble, areas } = outcome(loose([arc(0, 2.5), arc(1.5, 3), arc(4, 2.8)]));
    expect(trouble).toEqual([]);
    expect(areas[0]).toBeCloseTo(100 * Math.PI, 9);
    expect(arrangement.edges).toHaveLength(6);
    expect(arrangement.edges.filter(({ sources }) => sources.length === 2)).toHaveLength(3);
  });

  test('a polyline that goes back over itself is reported once', () => {
    const way = [
      line(0, 0, 10, 0),
      line(10, 0, 10, 10),
      line(10, 10, 10, 5),
      line(10, 5, 10, 10),
      line(10, 10, 0, 0),
    ];
    const { trouble, areas } = outcome(way.map((span) => ({ span, source: 7 })));
    expect(trouble).toEqual([{ kind: 'doubled', source: 7, other: 7, at: { x: 10, y: 7.5 } }]);
    expect(areas).toEqual([50]);
  });
});

test('a span without length is reported and costs nothing', () => {
  const { trouble, areas } = outcome([
    ...sourced([rectangle(0, 0, 40, 20)]),
    { span: line(40, 20, 40, 20), source: 1 },
  ]);
  expect(trouble).toEqual([{ kind: 'zero-length', source: 1, at: { x: 40, y: 20 } }]);
  expect(areas).toEqual([800]);
});

/** Lines of 200 mm through one point, turned evenly. */
function star(count: number): SourcedSpan[] {
  return loose(
    Array.from({ length: count }, (_, i) => {
      const [x, y] = [100 * Math.cos((Math.PI * i) / count), 100 * Math.sin((Math.PI * i) / count)];
      return line(50 - x, 50 - y, 50 + x, 50 + y);
    }),
  );
}

describe('linework that crosses itself beyond reason', () => {
  test('300 lines through one point meet there, and work for each meeting does not grow with their number', {
    tags: ['long'],
  }, () => {
    const arranged = (count: number) => {
      const before = process.cpuUsage();
      const { trouble } = outcome(star(count));
      expect(trouble.map(({ kind }) => kind)).toEqual(['dangling']);
      const { user } = process.cpuUsage(before);
      return user / count ** 2;
    };
    arranged(60);
    // A merge of all pairs at one place would take 25 times as long a meeting.
    expect(arranged(300)).toBeLessThan(10 * arranged(60));
  });

  test('lines meet at more places than allowed: nothing is arranged, and only that is reported', () => {
    const most = { meetings: 100, pairs: 1e6 };
    const { arrangement, trouble } = arrange(star(40), { joinTolerance: 0.05, most });
    expect(arrangement.faces).toHaveLength(1);
    expect(trouble).toMatchObject([{ kind: 'too-crossed', what: 'meetings', limit: 100 }]);
  });

  test.each([1, 10, 1000])(
    'with room for %i pairs a hundred free ends side by side are too many',
    (pairs) => {
      const rake = Array.from({ length: 100 }, (_, i) => line(i / 100, 0, i / 100 + 50, 50));
      const { trouble } = arrange(loose(rake), { joinTolerance: 0.05, most: { meetings: 100, pairs } });
      expect(trouble).toMatchObject([{ kind: 'too-crossed', what: 'pairs', limit: pairs }]);
    },
  );
});
