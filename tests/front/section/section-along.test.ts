import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depthAt } from '#front/depth-at.ts';
import { endMinute } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { type SectionPoint, sectionAlong } from '#front/section/section-along.ts';
import { chordGap } from '#support/geometry/chord-gap.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf, RATE } from '#support/parts/front-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

const FAR = 400;

// Scribe positions from the worked table of the method (an independent fast-marching solver): the front stands at the next
// level at the drawn lines x = 8, 14, 18.
const sideBySide = indexFront(
  frontOf({
    stages: [
      { level: 3, opening: [rectangle(-FAR, -FAR, 8 - Math.sqrt(9 - 2.2 ** 2), FAR)] },
      { level: 2.2, opening: [rectangle(-FAR, -FAR, 14 - Math.sqrt(2.2 ** 2 - 1), FAR)] },
      { level: 1, opening: [rectangle(-FAR, -FAR, 17, FAR)] },
    ],
  }),
);

function has(section: readonly SectionPoint[], distance: number): boolean {
  return section.some((point) => Math.abs(point.distance - distance) < 1e-6);
}

test('M2 a section has its breakpoints exactly where floors begin and end', () => {
  const section = sectionAlong(sideBySide, { x: 0, y: 0 }, { x: 25, y: 0 });
  for (const x of [8 - Math.sqrt(9 - 2.2 ** 2), 8, 14 - Math.sqrt(2.2 ** 2 - 1), 14, 17, 18]) {
    expect(has(section, x), `a place at ${x}`).toBe(true);
  }
  expect(section[0]?.distance).toBe(0);
  expect(section.at(-1)?.distance).toBe(25);
});

test('M2 flat stretches cost two places, fillets as many as the tolerance needs', () => {
  const count = (tolerance: number): number =>
    sectionAlong(sideBySide, { x: 0, y: 0 }, { x: 25, y: 0 }, { tolerance }).length;
  expect(count(0.05)).toBeLessThan(40);
  expect(count(0.0005)).toBeLessThan(500);
  expect(count(0.0005)).toBeGreaterThan(count(0.05));
});

test('M2 straight lines between the places keep to the front, at any minute and along any line', {
  tags: ['long'],
}, () => {
  const tolerance = 0.01;
  const line = fc.record({
    from: fc.record({ x: fc.integer({ min: -5, max: 75 }), y: fc.integer({ min: -5, max: 75 }) }),
    to: fc.record({ x: fc.integer({ min: -5, max: 75 }), y: fc.integer({ min: -5, max: 75 }) }),
    percent: fc.integer({ min: 10, max: 100 }),
  });
  fc.assert(
    fc.property(randomPart, line, (part, { from, to, percent }) => {
      const front = { ...planOf(part), thickness: 6 };
      const index = indexFront(front);
      const minute = (endMinute(front) * percent) / 100;
      const section = sectionAlong(index, from, to, { minute, tolerance });
      expect(chordGap(section, (place) => depthAt(index, place, minute).depth)).toBeLessThanOrEqual(
        tolerance,
      );
    }),
    { numRuns: 60 },
  );
});

test('M2 bands: under a deep floor every stage took what its bath etched, from the top down', () => {
  const section = sectionAlong(sideBySide, { x: 0, y: 0 }, { x: 25, y: 0 });
  const floor = section[0];
  expect(floor?.stage).toBe(1);
  const expected = [0.8, 2, 3];
  floor?.bands.forEach((depth, i) => {
    expect(depth).toBeCloseTo(expected[i] ?? Number.NaN, 12);
  });
  const middle = section.find(({ depth }) => depth === 2.2);
  const under = [0, 1.2, 2.2];
  middle?.bands.forEach((depth, i) => {
    expect(depth).toBeGreaterThanOrEqual((under[i] ?? 0) - 1e-12);
  });
});

test('M2 at a minute in between, later bands are still empty of metal taken', () => {
  const section = sectionAlong(sideBySide, { x: 0, y: 0 }, { x: 25, y: 0 }, { minute: 0.5 / RATE });
  const bands = section[0]?.bands ?? [];
  for (const depth of bands) expect(depth).toBeCloseTo(0.5, 12);
  expect(section.find(({ distance }) => distance > 9)?.depth).toBe(0);
});

test('M2 evenly spaced places when a number of samples is asked', () => {
  const section = sectionAlong(sideBySide, { x: 0, y: 0 }, { x: 25, y: 0 }, { samples: 26 });
  expect(section.map(({ distance }) => distance)).toEqual(Array.from({ length: 26 }, (_, i) => i));
});

test('M2 thickness left and what was asked stand beside the depth; off the sheet there is neither metal nor depth', () => {
  const index = indexFront(
    frontOf({
      stages: [{ level: 2, opening: [rectangle(0, 0, 10, 10)] }],
      sheet: [rectangle(-5, -5, 40, 40)],
      thickness: 5,
    }),
  );
  const section = sectionAlong(
    index,
    { x: -10, y: 5 },
    { x: 20, y: 5 },
    {
      targetAt: ({ x }) => (x < 10.5 ? 2 : 0),
      targetBreaks: [20.5],
    },
  );
  expect(section[0]).toMatchObject({ depth: 0, stage: 0, thickness: 0 });
  const onFloor = section.find(({ x }) => x > 1 && x < 10);
  expect(onFloor ?? section.find(({ x }) => x >= 10)).toBeDefined();
  const edge = section.find(({ x }) => Math.abs(x - 10) < 1e-9);
  expect(edge).toMatchObject({ depth: 2, thickness: 3, target: 2 });
  expect(has(section, 20.5)).toBe(true);
  expect(section.at(-1)).toMatchObject({ depth: 0, thickness: 5, target: 0 });
});
