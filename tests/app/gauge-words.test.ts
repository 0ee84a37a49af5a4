import { expect, test } from 'vitest';
import { gaugeWords } from '#app/views/section/gauge-words.ts';
import type { PlaceDepth } from '#run/depth-job.ts';

const words = (
  reading: PlaceDepth | undefined,
  face: 'near' | 'far',
  cut?: { cusp: number; depth: number },
) =>
  gaugeWords(reading, { unit: 'mm', face, cut: cut && { id: 'R03', ...cut } })
    .replaceAll('\u202f', ' ')
    .replaceAll('\u00a0', ' ');
const at = { x: 12, y: 7 };
const near = { ...at, depth: 0.7, target: 0.7, thickness: 2.1, stage: 2 };
const both: PlaceDepth = { ...near, far: { depth: 1.2, target: 1.2, stage: 1 } };

test('a part of one face: depth, what is left, and since when', () => {
  expect(words(near, 'near')).toBe('depth 0.70 mm, leaves 2.10 mm, etched since stage 2');
  expect(words({ ...near, depth: 0, thickness: 4, stage: 0 }, 'near')).toBe('untouched, 4.00 mm thick');
  expect(words({ ...near, target: undefined }, 'near')).toBe('no metal');
  expect(words(undefined, 'far')).toBe('…');
});

test('both faces, the one on show first; what is left is one and the same', () => {
  const [fromNear, fromFar] = [
    'depth 0.70 mm from the near face since stage 2',
    'depth 1.20 mm from the far face since stage 1',
  ];
  expect(words(both, 'near')).toBe(`${fromNear}, ${fromFar}, leaves 2.10 mm`);
  expect(words(both, 'far')).toBe(`${fromFar}, ${fromNear}, leaves 2.10 mm`);
});

test('etched behind alone is not untouched', () => {
  const behind = { ...both, depth: 0, stage: 0, thickness: 2.8 };
  expect(words(behind, 'near')).toBe(
    'untouched on the near face, depth 1.20 mm from the far face since stage 1, leaves 2.80 mm',
  );
  const land = { ...behind, thickness: 4, far: { depth: 0, target: 0, stage: 0 } };
  expect(words(land, 'far')).toBe('untouched on both faces, 4.00 mm thick');
});

test('cut through: how far the cusp stands out, and at which depth', () => {
  const gone = { ...both, depth: 2.2, thickness: 0, far: { depth: 2.2, target: 2.2, stage: 1 } };
  expect(words(gone, 'near', { cusp: 1.16, depth: 2 })).toBe(
    'cut through, cusp stands out 1.16 mm at 2.00 mm deep',
  );
  expect(words(gone, 'near')).toBe('cut through');
});
