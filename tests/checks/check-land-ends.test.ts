import { describe, expect, test } from 'vitest';
import { rectangle } from '#support/geometry/shapes.ts';
import { checkPart } from '#support/parts/check-part.ts';

const sheet = rectangle(0, 0, 200, 120);

/** Two pockets that cross: 40 to 100 and 80 to 150 across, 30 to 70 and 55 to 100 up. */
const crossed = [rectangle(40, 30, 100, 70), rectangle(80, 55, 150, 100)];

function endsOf(drawn: Omit<Parameters<typeof checkPart>[0], 'sheet'>) {
  return checkPart({ sheet, ...drawn }).filter(({ code }) => code === 'land-ends-in-point');
}

describe('land-ends-in-point', () => {
  test('what lies in two crossing outlines stays as land: it ends in the two places where they cross', () => {
    const [found, ...others] = endsOf({
      outlines: crossed,
      depths: [
        [50, 40, 1.2],
        [140, 90, 2.3],
      ],
    });
    expect(others).toEqual([]);
    expect(found?.facts).toEqual({ places: 2, limit: 4.6 });
    expect([
      { x: 80, y: 70 },
      { x: 100, y: 55 },
    ]).toContainEqual(found?.place.at);
    // Both pockets, the land around them, and the land in both.
    expect(found?.place.regions).toHaveLength(4);
  });

  test('none where it has a depth of its own', () => {
    expect(
      endsOf({
        outlines: crossed,
        depths: [
          [50, 40, 1.2],
          [140, 90, 2.3],
          [90, 62, 2.3],
        ],
      }),
    ).toEqual([]);
  });

  test('two pockets that touch by a corner', () => {
    const [found] = endsOf({
      outlines: [rectangle(20, 20, 70, 50), rectangle(70, 50, 130, 90)],
      depths: [
        [30, 30, 0.6],
        [100, 80, 0.9],
      ],
    });
    expect(found).toMatchObject({ facts: { places: 1, limit: 3 }, place: { at: { x: 70, y: 50 } } });
  });

  test('is placed where the floor beside it is the deepest, whichever touch is drawn first', () => {
    const shallow = [rectangle(10, 10, 30, 25), rectangle(30, 25, 50, 40)];
    const deep = [rectangle(90, 20, 120, 50), rectangle(120, 50, 150, 80)];
    const depths = [
      [15, 15, 0.6],
      [45, 35, 0.7],
      [100, 30, 2.6],
      [140, 70, 1.9],
    ] as const;
    for (const outlines of [
      [...shallow, ...deep],
      [...deep, ...shallow],
    ]) {
      const [found] = endsOf({ outlines, depths });
      expect(found).toMatchObject({ facts: { places: 2, limit: 5.2 }, place: { at: { x: 120, y: 50 } } });
    }
  });

  test('none for a boss on the step between two floors, nor for pockets that share a side', () => {
    expect(
      endsOf({
        outlines: [rectangle(20, 20, 90, 90), rectangle(90, 20, 150, 90), rectangle(80, 40, 104, 65)],
        depths: [
          [30, 30, 1.1],
          [140, 80, 2.2],
        ],
      }),
    ).toEqual([]);
  });
});
