/** Points of a section that are not seen are left out, and none that is: on a pocket whose wall is a quarter circle. */
import { expect, it } from 'vitest';
import { thinRun } from '#app/scene/relief/thin-run.ts';
import { itemAt } from '#geometry/assert.ts';

/** 40 mm of sheet, 5 mm thick, a point every 1/20 mm: level down to 12 mm, there a wall of radius 3 mm up to the land. */
const depthAt = (distance: number) =>
  distance <= 12 ? 3 : distance >= 15 ? 0 : Math.sqrt(9 - (distance - 12) ** 2);
const run = Array.from({ length: 801 }, (_, index) => {
  const distance = index / 20;
  const depth = depthAt(distance);
  const bands = [Math.min(depth, 1.8), depth];
  return { distance, x: distance, y: 0, depth, stage: 0, bands, thickness: 5 - depth, target: depth };
});

for (const [along, down] of [
  [0.25, 27],
  [3, 12],
  [80, 80],
] as const) {
  it(`at ${along} px a mm along and ${down} down: no line moves by more than a tenth of a pixel`, () => {
    const kept = thinRun(run, { along, down });
    expect(kept.length).toBeLessThan(run.length / 8);
    for (const line of [0, 1]) {
      const chords = kept.slice(1).map((point, index) => [itemAt(kept, index), point] as const);
      for (const { distance, bands } of run) {
        const place = { x: distance * along, y: itemAt(bands, line) * down };
        const off = chords.map(([from, to]) =>
          offChord(
            place,
            { x: from.distance * along, y: itemAt(from.bands, line) * down },
            { x: to.distance * along, y: itemAt(to.bands, line) * down },
          ),
        );
        expect(Math.min(...off)).toBeLessThan(0.1001);
      }
    }
  });
}

it('keeps both ends of a run', () => {
  const kept = thinRun(run, { along: 0.01, down: 0.01 });
  expect([kept.at(0)?.distance, kept.at(-1)?.distance]).toEqual([0, 40]);
});

interface Place {
  readonly x: number;
  readonly y: number;
}

function offChord(place: Place, from: Place, to: Place): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = ((place.x - from.x) * dx + (place.y - from.y) * dy) / (dx * dx + dy * dy);
  const at = Math.min(1, Math.max(0, share));
  return Math.hypot(place.x - from.x - at * dx, place.y - from.y - at * dy);
}
