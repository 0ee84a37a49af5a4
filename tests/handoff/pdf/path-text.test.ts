/** Paths as the operators of a page, read back as points: 72 to 25.4 mm, y from the page's upper edge. */
import { expect, test } from 'vitest';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import { POINTS, pathText } from '#handoff/pdf/path-text.ts';

const HEIGHT = 297;
const line = lineSpan({ x: 10, y: 20 }, { x: 35.4, y: 32.7 });

/** mm, y up, of each operator. */
function read(text: string): { readonly operator: string; readonly at: readonly (readonly number[])[] }[] {
  return text.split('\n').map((each) => {
    const words = each.split(' ');
    const figures = words.slice(0, -1).map((word) => Number(word) / POINTS);
    const at = Array.from({ length: figures.length / 2 }, (_, i) => [
      figures[2 * i] ?? Number.NaN,
      HEIGHT - (figures[2 * i + 1] ?? Number.NaN),
    ]);
    return { operator: words.at(-1) ?? '', at };
  });
}

test('a line: where it starts and where it goes to; closed, with the way back', () => {
  expect(pathText([{ closed: false, spans: [line] }], HEIGHT)).toBe(
    '28.346457 785.19685 m\n100.346457 749.19685 l',
  );
  expect(
    pathText([{ closed: true, spans: [line] }], HEIGHT)
      .split('\n')
      .at(-1),
  ).toBe('h');
});

test('an arc: cubics from its start to its end, whose middles lie on it within a tenth of a micrometre', () => {
  const arc = arcSpan({ center: { x: 80, y: 110 }, radius: 37, from: 0.4, sweep: -2.3 });
  const [first, ...cubics] = read(pathText([{ closed: false, spans: [arc] }], HEIGHT));
  let from = first?.at[0] ?? [];
  expect(from).toEqual([expect.closeTo(arc.start.x, 5), expect.closeTo(arc.start.y, 5)]);
  for (const { operator, at } of cubics) {
    expect(operator).toBe('c');
    const [a = [], b = [], to = []] = at;
    const middle = [0, 1].map(
      (axis) => ((from[axis] ?? 0) + 3 * (a[axis] ?? 0) + 3 * (b[axis] ?? 0) + (to[axis] ?? 0)) / 8,
    );
    expect(Math.abs(Math.hypot((middle[0] ?? 0) - 80, (middle[1] ?? 0) - 110) - 37)).toBeLessThan(1e-4);
    from = to;
  }
  expect(from).toEqual([expect.closeTo(arc.end.x, 5), expect.closeTo(arc.end.y, 5)]);
});

test('several paths one after the other; one without spans is none', () => {
  const two = pathText(
    [
      { closed: false, spans: [line] },
      { closed: true, spans: [] },
      { closed: true, spans: [line] },
    ],
    HEIGHT,
  );
  expect(read(two).map(({ operator }) => operator)).toEqual(['m', 'l', 'm', 'l', 'h']);
  expect(pathText([], HEIGHT)).toBe('');
});
