/** Words on the sheet, placed as on a map: boxes by hand, then any lot of regions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeCard } from '#app/views/sheet/place-card.ts';
import { placeFlags } from '#app/views/sheet/words/place-flags.ts';
import { type LabelRequest, meets, overlap, placeLabels } from '#app/views/sheet/words/place-labels.ts';
import type { Point } from '#geometry/point.ts';

const room = { width: 840, height: 470, taken: [], lines: [] };

function rectangle(x: number, y: number, width: number, height: number): Point[] {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

function request(id: string, ring: Point[], holes: Point[][] = []): LabelRequest {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  const middle = {
    x: (Math.min(...xs) + Math.max(...xs)) / 2,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
  return { id, rings: [ring, ...holes], middle, nameWidth: 25, figureWidth: 31 };
}

describe('a name and its figure', () => {
  it('stand in two lines in the middle where there is room', () => {
    expect(placeLabels([request('R01', rectangle(100, 50, 90, 120))], room)).toMatchObject([
      { id: 'R01', form: 'two', at: { x: 145, y: 110 } },
    ]);
  });

  it('stand in one line where the region is low, the name alone where it is narrow, too, and not at all where it is tiny', () => {
    // 4 px clear all round: one line is 16 + 8 high and 25 + 6 + 31 + 8 = 70 wide, a name 33.
    const low = placeLabels([request('R02', rectangle(100, 50, 72, 25))], room);
    const narrow = placeLabels([request('R03', rectangle(100, 50, 36, 25))], room);
    expect(low[0]?.form).toBe('one');
    expect(narrow[0]?.form).toBe('name');
    expect(placeLabels([request('R04', rectangle(100, 50, 30, 22))], room)).toEqual([]);
  });

  it('go aside for a pocket inside and for the section line', () => {
    const pocket = rectangle(130, 90, 60, 40);
    const [label] = placeLabels([request('R05', rectangle(100, 50, 120, 120), [pocket])], room);
    expect(label).toBeDefined();
    const hole = { minX: 130, minY: 90, maxX: 190, maxY: 130 };
    expect(label !== undefined && overlap(label.box, hole)).toBe(false);
    const line = { from: { x: 0, y: 110 }, to: { x: 840, y: 110 } };
    const [beside] = placeLabels([request('R06', rectangle(100, 50, 90, 120))], { ...room, lines: [line] });
    expect(Math.abs((beside?.at.y ?? 110) - 110)).toBeGreaterThanOrEqual(16 + 9);
  });

  it('of two that compete the smaller goes without', () => {
    const [large, small] = [rectangle(100, 50, 80, 60), rectangle(120, 60, 45, 45)];
    expect(placeLabels([request('small', small), request('large', large)], room).map(({ id }) => id)).toEqual(
      ['large'],
    );
  });

  it('never overlap, lie inside their regions and in the view, whatever the regions', () => {
    const one = fc.record({
      x: fc.integer({ min: -60, max: 820 }),
      y: fc.integer({ min: -60, max: 450 }),
      width: fc.integer({ min: 5, max: 300 }),
      height: fc.integer({ min: 5, max: 200 }),
      lean: fc.integer({ min: -40, max: 40 }),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 24 }), (regions) => {
        const requests = regions.map(({ x, y, width, height, lean }, index) => {
          const [a, b, c, d] = rectangle(x, y, width, height) as [Point, Point, Point, Point];
          return request(`R${index}`, [a, b, { x: c.x + lean, y: c.y }, { x: d.x + lean, y: d.y }]);
        });
        const placed = placeLabels(requests, room);
        placed.forEach(({ id, box }, index) => {
          for (const other of placed.slice(index + 1)) expect(overlap(box, other.box)).toBe(false);
          const ring = requests.find((each) => each.id === id)?.rings[0] ?? [];
          ring.forEach((to, at) => {
            expect(meets(box, ring.at(at - 1) ?? to, to)).toBe(false);
          });
          expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(0);
          expect(box.maxX).toBeLessThanOrEqual(room.width);
          expect(box.maxY).toBeLessThanOrEqual(room.height);
        });
      }),
    );
  });
});

describe('a flag beside its point', () => {
  it('goes up and aside first, and to another side where that is taken', () => {
    const ask = { width: 200, height: 100, half: 9, away: 17, taken: [] };
    const [free] = placeFlags([{ id: 'f1', point: { x: 60, y: 50 } }], ask);
    expect(free?.at.x).toBeCloseTo(60 + 0.7 * 17, 9);
    expect(free?.at.y).toBeCloseTo(50 - 0.7 * 17, 9);
    const taken = [{ minX: 60, minY: 20, maxX: 90, maxY: 50 }];
    const [moved] = placeFlags([{ id: 'f1', point: { x: 60, y: 50 } }], { ...ask, taken });
    expect(moved?.at.x).toBeCloseTo(60 - 0.7 * 17, 9);
  });

  it('is left out of a corner that has no room for it', () => {
    const ask = { width: 15, height: 12, half: 9, away: 17, taken: [] };
    expect(placeFlags([{ id: 'f2', point: { x: 3, y: 2 } }], ask)).toEqual([]);
  });
});

describe('the card of a resting pointer', () => {
  const ask = { width: 252, height: 140, view: { width: 840, height: 470 } };

  it('stays whole in the view in its corners, and off the pointer', () => {
    for (const pointer of [
      { x: 2, y: 3 },
      { x: 835, y: 4 },
      { x: 5, y: 466 },
      { x: 838, y: 467 },
    ]) {
      const { x, y } = placeCard({ ...ask, pointer, around: undefined, floors: [] });
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
      expect(x + ask.width).toBeLessThanOrEqual(840);
      expect(y + ask.height).toBeLessThanOrEqual(470);
      const isUnder =
        pointer.x > x && pointer.x < x + ask.width && pointer.y > y && pointer.y < y + ask.height;
      expect(isUnder).toBe(false);
    }
  });

  it('covers ground rather than another floor, and never what is pointed at', () => {
    const around = { minX: 300, minY: 200, maxX: 380, maxY: 260 };
    const right = { minX: 390, minY: 150, maxX: 720, maxY: 440 };
    const { x, y } = placeCard({ ...ask, pointer: { x: 340, y: 230 }, around, floors: [around, right] });
    const card = { minX: x, minY: y, maxX: x + ask.width, maxY: y + ask.height };
    expect(overlap(card, right)).toBe(false);
    expect(overlap(card, around)).toBe(false);
  });
});
