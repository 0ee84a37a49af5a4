import { describe, expect, test } from 'vitest';
import { depthsAt } from '#front/depth-at.ts';
import { indexFront } from '#front/front-index.ts';
import type { Loop } from '#geometry/span.ts';
import { type Bared, etchBlock } from '#oracle/etched-block.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf } from '#support/parts/front-of.ts';

/** mm; the bar for the mean gap at a spacing of 0.02 mm. */
const MEAN_GAP = 0.002;

type Strip = readonly [from: number, to: number];

/** Strips across a section, by stage; each stage's opening holds the ones before it. */
interface SectionCase {
  readonly name: string;
  readonly width: number;
  readonly stages: readonly { readonly level: number; readonly strips: readonly Strip[] }[];
}

const sections: readonly SectionCase[] = [
  {
    name: 'side by side',
    width: 10,
    stages: [
      { level: 1.5, strips: [[0, 3]] },
      { level: 1.1, strips: [[0, 5.4]] },
      { level: 0.5, strips: [[0, 7.2]] },
    ],
  },
  {
    name: 'nested',
    width: 10,
    stages: [
      { level: 1.4, strips: [[4, 5.5]] },
      { level: 0.8, strips: [[2.1, 7.9]] },
    ],
  },
  {
    name: 'a land too narrow to stay whole, not lost',
    width: 9,
    stages: [
      {
        level: 1.2,
        strips: [
          [0, 3],
          [5.5, 9],
        ],
      },
    ],
  },
  {
    name: 'two fronts met under a land',
    width: 9,
    stages: [
      { level: 1.5, strips: [[0, 3.2]] },
      {
        level: 1.0,
        strips: [
          [0, 3.2],
          [4.2, 9],
        ],
      },
    ],
  },
];

function sectionGap({ width, stages }: SectionCase, factor: number, spacing: number): number {
  const deepest = stages[0]?.level ?? 0;
  const bared = stages.flatMap(({ level, strips }) =>
    strips.map(([minX, maxX]): Bared => {
      return {
        minX,
        maxX,
        minY: Number.NEGATIVE_INFINITY,
        maxY: Number.POSITIVE_INFINITY,
        since: deepest - level,
      };
    }),
  );
  const block = { width, breadth: 0, depth: deepest + 0.2, factor, spacing };
  const front = frontOf({
    stages: stages.map(({ level, strips }) => ({
      level,
      opening: strips.map(([from, to]) => rectangle(from, -100, to, 100)),
    })),
    etchFactor: factor,
  });
  return meanGap(etchBlock(block, bared, deepest), indexFront(front));
}

function meanGap(oracle: ReturnType<typeof etchBlock>, index: ReturnType<typeof indexFront>): number {
  const { depths } = depthsAt(index, Float64Array.from(oracle.places.flatMap(({ x, y }) => [x, y])));
  let sum = 0;
  depths.forEach((depth, i) => {
    sum += Math.abs(depth - (oracle.depths[i] ?? Number.NaN));
  });
  return sum / depths.length;
}

describe.each([0.6, 1, 1.5])('M2.1 against first arrival by fast marching, etch factor %d', (factor) => {
  test.each(sections)('section: $name', (section) => {
    const coarse = sectionGap(section, factor, 0.04);
    const fine = sectionGap(section, factor, 0.02);
    expect(fine).toBeLessThan(MEAN_GAP);
    expect(fine).toBeLessThan(coarse / 2);
  });

  test('block: a pocket that ends on the side of a deeper one, a T', { tags: ['long'] }, () => {
    const levels = { deep: 0.7, shallow: 0.4 };
    const deep = { minX: 1.2, maxX: 1.9, minY: 0.5, maxY: 2.7 };
    const stem = { minX: 1.2, maxX: 3, minY: 1.3, maxY: 2 };
    const bared: Bared[] = [
      { ...deep, since: 0 },
      { ...stem, since: levels.deep - levels.shallow },
    ];
    const tee: Loop[] = [teeLoop(deep, stem)];
    const front = frontOf({
      stages: [
        { level: levels.deep, opening: [rectangle(deep.minX, deep.minY, deep.maxX, deep.maxY)] },
        { level: levels.shallow, opening: tee },
      ],
      etchFactor: factor,
    });
    const gapAt = (spacing: number): number =>
      meanGap(
        etchBlock({ width: 3.6, breadth: 3.2, depth: 0.8, factor, spacing }, bared, levels.deep),
        indexFront(front),
      );
    const coarse = gapAt(0.04);
    const fine = gapAt(0.02);
    expect(fine).toBeLessThan(MEAN_GAP);
    expect(fine).toBeLessThan(coarse / 2);
  });
});

type Rectangle = Omit<Bared, 'since'>;

/** The outline of an upright rectangle with a stem that leaves its right side. */
function teeLoop(upright: Rectangle, stem: Rectangle): Loop {
  const corners = [
    [upright.minX, upright.minY],
    [upright.maxX, upright.minY],
    [upright.maxX, stem.minY],
    [stem.maxX, stem.minY],
    [stem.maxX, stem.maxY],
    [upright.maxX, stem.maxY],
    [upright.maxX, upright.maxY],
    [upright.minX, upright.maxY],
  ] as const;
  return corners.map(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
    return { kind: 'line', start: { x, y }, end: { x: nextX, y: nextY } };
  });
}
