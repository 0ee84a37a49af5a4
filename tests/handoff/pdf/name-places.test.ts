/** Names on a picture of the part; the pen here gives every letter half its size. */
import { expect, test } from 'vitest';
import { lineSpan } from '#geometry/span.ts';
import { placeName } from '#handoff/pdf/name-places.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const pen = { textWidth: (text: string, { size }) => text.length * size * 0.5 } as Pen;

const asked = (width: number, height: number) => ({
  lines: ['R01', '0.80'],
  loops: [rectangle(0, 0, width, height)],
  at: { x: width / 2, y: height / 2 },
});

const across = lineSpan({ x: -5, y: 10 }, { x: 45, y: 10 });

test('a name stands in the middle of a wide area, at the largest size', () => {
  const place = placeName(pen, asked(40, 20), { lines: [], marks: [], taken: [] });
  expect(place).toMatchObject({ lines: ['R01', '0.80'], middle: { x: 20, y: 10 }, size: 3.2 });
});

test('it gives way to a line across, and stands smaller beside it', () => {
  const place = placeName(pen, asked(40, 20), { lines: [across], marks: [], taken: [] });
  const { minY = 0, maxY = 0 } = place?.box ?? {};
  expect(minY > 10 || maxY < 10).toBe(true);
  expect(minY > 0.5 && maxY < 19.5).toBe(true);
});

test('where there is no room beside the line it covers it; names do not stand on each other', () => {
  const ground = {
    lines: [{ ...across, start: { x: -5, y: 3.5 }, end: { x: 45, y: 3.5 } }],
    marks: [],
    taken: [],
  };
  const first = placeName(pen, asked(40, 7), ground);
  expect(first?.lines).toEqual(['R01', '0.80']);
  expect((first?.box.minY ?? 9) < 3.5 && (first?.box.maxY ?? 0) > 3.5).toBe(true);
  const second = placeName(pen, asked(40, 7), ground);
  if (first === undefined || second === undefined) throw new Error('there is room for both');
  const apart = Math.max(second.box.minX - first.box.maxX, first.box.minX - second.box.maxX);
  expect(apart).toBeGreaterThan(0);
});

test('a low area has the name alone, and one that is too small none', () => {
  expect(placeName(pen, asked(40, 3.2), { lines: [], marks: [], taken: [] })?.lines).toEqual(['R01']);
  expect(placeName(pen, asked(2, 2), { lines: [], marks: [], taken: [] })).toBeUndefined();
});
