import { expect, test } from 'vitest';
import { indexFront } from '#front/front-index.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf } from '#support/parts/front-of.ts';

test('a stage with more lines than a call takes as arguments is indexed whole', { tags: ['long'] }, () => {
  // 40,000 pockets of four lines: engines take some 120,000 arguments at once.
  const opening = Array.from({ length: 40_000 }, (_, n) => {
    const [x, y] = [(n % 200) * 9, Math.floor(n / 200) * 7];
    return rectangle(x, y, x + 4, y + 3);
  });
  const { features } = indexFront(frontOf({ stages: [{ level: 0.4, opening }] }));
  expect(features.length).toBeGreaterThanOrEqual(160_000);
});
