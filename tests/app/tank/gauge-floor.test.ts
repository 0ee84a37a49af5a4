/** Which floor is offered first to be gauged. */
import { describe, expect, it } from 'vitest';
import { floorToGauge } from '#app/state/tank/gauge-floor.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';

function floor(id: string, [width, height]: readonly [number, number], level: number): ShownRegion {
  const corners = [
    [20, 31],
    [20 + width, 31],
    [20 + width, 31 + height],
    [20, 31 + height],
  ] as const;
  return {
    id,
    layer: 'POCKETS',
    label: [20 + width / 2, 31 + height / 2],
    area: width * height,
    contours: [{ closed: true, vertices: corners.map(([x, y]) => [x, y, 0] as const) }],
    asked: { depth: level, plus: 0.05, minus: 0.05 },
    level,
  };
}

const strip = floor('R04.1', [58, 2.9], 1.47);
const narrow = floor('R05', [46, 8.9], 1.47);
const wide = floor('R07', [53, 38], 1.47);

describe('the floor to gauge', () => {
  it('is the first that has room for a gauge clear of its walls: not the end strip of a taper', () => {
    expect(floorToGauge([strip, narrow, wide])?.id).toBe('R07');
    // 4.5 each side of the middle: 3 clear and a fillet of 1.47.
    expect(floorToGauge([strip, floor('R06', [46, 9], 1.47), wide])?.id).toBe('R06');
  });

  it('is the one with most room where none has enough', () => {
    expect(floorToGauge([strip, narrow])?.id).toBe('R05');
    expect(floorToGauge([narrow, strip])?.id).toBe('R05');
    expect(floorToGauge([])).toBeUndefined();
  });
});
