/** M9.5 the front of both faces against second-order fast marching through the whole thickness, from both sides. */
import { describe, expect, test } from 'vitest';
import { depthsAt } from '#front/depth-at.ts';
import { indexFront } from '#front/front-index.ts';
import { type BaredStrip, etchSlab } from '#oracle/etched-slab.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf } from '#support/parts/front-of.ts';

interface Opened {
  readonly level: number;
  readonly strips: readonly (readonly [from: number, to: number])[];
}

interface SlabCase {
  readonly name: string;
  readonly width: number;
  readonly thickness: number;
  /** Deepest first; each opening holds those before it. */
  readonly near: readonly Opened[];
  readonly far: readonly Opened[];
  readonly isThrough: boolean;
}

const SLABS: readonly SlabCase[] = [
  {
    name: 'floors behind each other',
    width: 12,
    thickness: 2,
    near: [
      { level: 0.9, strips: [[2, 5]] },
      { level: 0.5, strips: [[2, 8]] },
    ],
    far: [{ level: 0.7, strips: [[3.4, 9]] }],
    isThrough: false,
  },
  {
    name: 'walls beside each other, a web between fillets',
    width: 10,
    thickness: 1.6,
    near: [{ level: 0.9, strips: [[0, 4.3]] }],
    far: [{ level: 0.9, strips: [[5.6, 10]] }],
    isThrough: false,
  },
  {
    name: 'fronts that meet: a slot cut out from both faces',
    width: 8,
    thickness: 1,
    near: [{ level: 0.7, strips: [[2.6, 5.2]] }],
    far: [{ level: 0.7, strips: [[2.6, 5.2]] }],
    isThrough: true,
  },
  {
    name: 'fronts that meet askew, the far face by another level',
    width: 9,
    thickness: 1.2,
    near: [
      { level: 0.9, strips: [[2, 4.4]] },
      { level: 0.4, strips: [[2, 6.6]] },
    ],
    far: [{ level: 0.9, strips: [[3.7, 7]] }],
    isThrough: true,
  },
];

const MEAN_GAP = 0.001;

/** Mean of what either surface is off where metal is left, and of what is left anywhere, mm. */
function gaps({ width, thickness, near, far }: SlabCase, factor: number, spacing: number) {
  const until = Math.max(...[...near, ...far].map(({ level }) => level));
  const bared = (opened: readonly Opened[]): BaredStrip[] =>
    opened.flatMap(({ level, strips }) => strips.map(([from, to]) => ({ from, to, since: until - level })));
  const columns = etchSlab(
    { width, thickness, factor, spacing },
    { near: bared(near), far: bared(far) },
    until,
  );
  const places = Float64Array.from(columns.flatMap(({ x }) => [x, 0]));
  const [ours, others] = [near, far].map((opened) => {
    const stages = opened.map(({ level, strips }) => ({
      level,
      opening: strips.map(([from, to]) => rectangle(from, -100, to, 100)),
    }));
    return depthsAt(indexFront(frontOf({ stages, etchFactor: factor, thickness })), places).depths;
  });
  let [surface, count, left] = [0, 0, 0];
  columns.forEach((column, i) => {
    const [zNear, zFar] = [ours?.[i] ?? Number.NaN, others?.[i] ?? Number.NaN];
    left += Math.abs(column.left - Math.max(0, thickness - zNear - zFar));
    if (column.left <= 0) return;
    surface += Math.abs(column.near - zNear) + Math.abs(column.far - zFar);
    count += 2;
  });
  return {
    surface: surface / count,
    left: left / columns.length,
    isThrough: columns.some((each) => each.left === 0),
  };
}

describe.each([0.7, 1, 1.4])('M9.5 against fast marching from both faces, etch factor %d', (factor) => {
  test.each(SLABS)('$name', (slab) => {
    const fine = gaps(slab, factor, 0.02);
    expect(fine.isThrough).toBe(slab.isThrough);
    expect(fine.surface).toBeLessThan(MEAN_GAP);
    expect(fine.left).toBeLessThan(MEAN_GAP);
  });
});
