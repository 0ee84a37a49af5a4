/** Names on the picture of a stage; the pen here gives every letter half its size. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, boxesMeet } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import { placePointNames, placeRegionNames } from '#handoff/pdf/stage-names.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';

const pen = { textWidth: (text: string, { size }) => text.length * size * 0.5 } as Pen;
const placed = { place: (point: Point) => point, loop: (loop: Loop) => loop };

function named(ask: { id: string; loops: Loop[]; label: Point }[], taken: readonly Box[] = []) {
  const regions = ask as unknown as PlannedRegion[];
  return placeRegionNames(pen, { regions }, { ids: ask.map(({ id }) => id), placed, taken });
}

describe('of gauge points', () => {
  test('stand right of their targets, or where they meet no other', () => {
    const names = placePointNames(pen, [
      { name: 'G7', at: { x: 20, y: 10 } },
      { name: 'G10', at: { x: 25, y: 10 } },
    ]);
    expect(names.map(({ text }) => text)).toEqual(['G7', 'G10']);
    expect(names[0]?.box.maxX).toBeLessThan(20);
    expect(names[1]?.box.minX).toBeGreaterThan(25);
  });

  test('any four that have room meet neither each other nor a target', () => {
    const place = fc.record({ x: fc.integer({ min: 0, max: 6 }), y: fc.integer({ min: 0, max: 4 }) });
    fc.assert(
      fc.property(
        fc.uniqueArray(place, { minLength: 2, maxLength: 4, selector: ({ x, y }) => `${x},${y}` }),
        (at) => {
          const points = at.map(({ x, y }, index) => ({ name: `G${index + 1}`, at: { x: x * 9, y: y * 9 } }));
          const boxes = placePointNames(pen, points).map(({ box }) => box);
          boxes.forEach((box, one) => {
            for (const other of boxes.slice(one + 1)) expect(boxesMeet(box, other)).toBe(false);
            for (const { at: target } of points) {
              expect(boxesMeet(box, { minX: target.x, maxX: target.x, minY: target.y, maxY: target.y })).toBe(
                false,
              );
            }
          });
        },
      ),
    );
  });
});

describe('of regions', () => {
  const strip = { id: 'R05.5', loops: [rectangle(50, 0, 55, 30)], label: { x: 52.5, y: 15 } };

  test('stand where the region has its own place, clear of what is taken', () => {
    const bay = { id: 'R02', loops: [rectangle(0, 0, 40, 30)], label: { x: 20, y: 15 } };
    const [free] = named([bay]);
    expect(free).toMatchObject({ isTurned: false });
    expect(((free?.box.minX ?? 0) + (free?.box.maxX ?? 0)) / 2).toBeCloseTo(20, 9);
    const target = { minX: 18, maxX: 22, minY: 13, maxY: 17 };
    const [moved] = named([bay], [target]);
    expect(moved !== undefined && boxesMeet(moved.box, target)).toBe(false);
    expect(moved?.leader).toBeUndefined();
  });

  test('run along a narrow strip, also beside a target in its middle', () => {
    const target = { minX: 50.6, maxX: 54.4, minY: 13.1, maxY: 16.9 };
    const [name] = named([strip], [target]);
    expect(name).toMatchObject({ text: 'R05.5', isTurned: true });
    expect(name?.box.minX).toBeGreaterThan(50);
    expect(name?.box.maxX).toBeLessThan(55);
  });

  test('keep out of a hole, and stand beside a region that is too small, with a leader to it', () => {
    const ring = {
      id: 'R01',
      loops: [
        rectangle(0, 0, 40, 30),
        polygon([
          [4, 4],
          [4, 26],
          [36, 26],
          [36, 4],
        ]),
      ],
      label: { x: 2, y: 15 },
    };
    const tiny = { id: 'R11', loops: [rectangle(70, 10, 72, 12)], label: { x: 71, y: 11 } };
    const [within, outside] = named([ring, tiny]);
    const hole = { minX: 4, minY: 4, maxX: 36, maxY: 26 };
    expect(within !== undefined && boxesMeet(within.box, hole)).toBe(false);
    expect(within?.leader).toBeUndefined();
    expect(outside?.box.minY).toBeGreaterThan(12);
    expect(outside?.leader?.[1]).toEqual({ x: 71, y: 11 });
  });
});
