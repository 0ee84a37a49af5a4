/** Every file of the plane has a test of its own name: what goes wrong there shows far away and late. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Types alone, but for a constant. */
const WITHOUT = new Set(['arrangement/arrangement.ts', 'grow/clipper-lib.d.ts', 'grow/grid-polygon.ts']);

test('every file of src/geometry has a test of its own name', () => {
  const tests = new Set(filesBelow('tests/geometry'));
  const bare = filesBelow('src/geometry').filter(
    (file) => !WITHOUT.has(file) && !tests.has(file.replace(/\.ts$/, '.test.ts')),
  );
  expect(bare).toEqual([]);
});

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts'));
}
