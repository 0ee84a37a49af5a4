/** Every file of the plane has a test of its own name: what goes wrong there shows far away and late. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Types alone, but for a constant. */
const WITHOUT = new Set(['arrangement.ts', 'clipper-lib.d.ts', 'grid-polygon.ts']);

test('every file of src/geometry has a test of its own name', () => {
  const tests = new Set(readdirSync('tests/geometry'));
  const bare = readdirSync('src/geometry').filter(
    (file) => !WITHOUT.has(file) && !tests.has(file.replace(/\.ts$/, '.test.ts')),
  );
  expect(bare).toEqual([]);
});
