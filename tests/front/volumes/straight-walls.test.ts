import { expect, test } from 'vitest';
import { momentAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { straightWalls } from '#front/volumes/straight-walls.ts';
import { neighborStages } from '#front/volumes/wall-groups.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf, RATE } from '#support/parts/front-of.ts';

test('one opening: what lies below it, and a quarter circle along its border', () => {
  const index = indexFront(frontOf({ stages: [{ level: 2, opening: [rectangle(0, 0, 20, 13)] }] }));
  const walls = straightWalls(index, neighborStages(index));
  expect(walls(momentAt(index.front))).toBeCloseTo(20 * 13 * 2 + (66 * Math.PI * 4) / 4, 9);
  expect(walls(momentAt(index.front, 0.8 / RATE))).toBeCloseTo(20 * 13 * 0.8 + (66 * Math.PI * 0.64) / 4, 9);
});

test('a wall that ends on a shallower floor keeps what of its quarter circle lies below that', () => {
  const inner = rectangle(20, 20, 51, 47);
  const outer = rectangle(0, 0, 90, 70);
  const index = indexFront(
    frontOf({
      stages: [
        { level: 3, opening: [inner] },
        { level: 1.8, opening: [outer] },
      ],
    }),
  );
  const below = (9 * Math.acos(1.8 / 3) - 1.8 * Math.sqrt(9 - 1.8 ** 2)) / 2;
  const expected =
    31 * 27 * 3 + (90 * 70 - 31 * 27) * 1.8 + 2 * (31 + 27) * below + (320 * Math.PI * 1.8 ** 2) / 4;
  expect(straightWalls(index, neighborStages(index))(momentAt(index.front))).toBeCloseTo(expected, 8);
});
