import { expect, test } from 'vitest';
import { checkedRelief } from '#front/relief/check-relief.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import type { Loop } from '#geometry/span.ts';
import { enclosedVolume, looseEdges } from '#support/geometry/mesh-faults.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';

const stages = [
  { level: 3, opening: [roundedRectangle(8, 8, 22, 20, 2)] },
  { level: 1, opening: [roundedRectangle(0, 0, 40, 30, 4)] },
];
const sheet = rectangle(-20, -10, 60, 45);

test.each([
  { x: 0, y: 0, origin: { x: 0, y: 0 } },
  { x: 700.125, y: -350, origin: { x: 0, y: 0 } },
  { x: 3000, y: 2000, origin: { x: 0, y: 0 } },
  { x: 1_000_000, y: -400_000.25, origin: { x: 1_000_020, y: -399_983 } },
])(
  'M2.7 a solid $x, $y mm from the drawing’s origin is whole, and counted from a whole millimetre',
  (far) => {
    const moved = (loop: Loop): Loop =>
      loop.map((span) => moveSpan(span, { turn: 0, factor: 1, mirrored: false, shift: far }));
    const kit = kitOf({
      stages: stages.map(({ level, opening }) => ({ level, opening: opening.map(moved) })),
      sheet: [moved(sheet)],
    });
    const { mesh, trouble } = checkedRelief(kit);
    expect(trouble).toBeUndefined();
    expect(mesh.origin).toEqual(far.origin);
    expect(looseEdges(mesh)).toBe(0);
    const volume = 80 * 55 * 6 - removedVolume(kit);
    expect(Math.abs(enclosedVolume(mesh) / volume - 1)).toBeLessThan(0.001);
    const corners = mesh.positions.filter((_, i) => i % 3 === 0).map((x) => x + mesh.origin.x - far.x);
    expect(Math.min(...corners)).toBeCloseTo(-20, 3);
  },
);
