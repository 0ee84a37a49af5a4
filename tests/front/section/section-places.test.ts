/** Sections held to the formula of M2.2 and M2.6, asked of every opening and span again (tests/oracle/plain-depth.ts). */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endMinute, type Front, frontOfPlan, momentAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { type SectionPoint, sectionAlong } from '#front/section/section-along.ts';
import type { Point } from '#geometry/point.ts';
import { isWithin, plainDepth } from '#oracle/plain-depth.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { frontOf, RATE } from '#support/parts/front-of.ts';
import { planOf, randomPart, randomSheet, TIGHT_SHEET } from '#support/random-parts/random-part.ts';
import { trials } from '#support/seeds/property-runs.ts';

const FAR = 400;

/** Depth at the end of each bath so far, in the order of the run, by the formula alone. */
function plainBands(front: Front, point: Point, now: number): number[] {
  return front.stages
    .toSorted((a, b) => a.number - b.number)
    .map(({ startMinute, minutes }) => {
      const { cuts, factors } = momentAt(front, Math.min(now, startMinute + minutes));
      const openings = front.stages.map(({ opening, base }, i) => ({
        loops: opening,
        base,
        cut: cuts[i] ?? Number.NaN,
        factor: factors[i] ?? Number.NaN,
      }));
      return plainDepth(openings, point);
    });
}

/** Whether all about the point is metal, or nothing is: on an edge of the sheet either may be read. */
function isClearOfEdges({ sheet }: Front, { x, y }: Point): boolean {
  const about = [1e-6, -1e-6].flatMap((by) => [
    { x: x + by, y },
    { x, y: y + by },
  ]);
  return new Set(about.map((point) => isWithin(sheet, point))).size === 1;
}

/** mm by which the section's chords leave the front and the bands, square to the chord, at `looks` places each. */
function worstOff(
  front: Front,
  section: readonly SectionPoint[],
  { looks = 12, now = endMinute(front) } = {},
) {
  let surface = 0;
  let bands = 0;
  section.slice(1).forEach((after, i) => {
    const before = section[i] as SectionPoint;
    const run = after.distance - before.distance;
    if (run === 0) return;
    for (let look = 1; look < looks; look++) {
      const share = look / looks;
      const at = { x: before.x + (after.x - before.x) * share, y: before.y + (after.y - before.y) * share };
      if (front.sheet.length > 0 && !isClearOfEdges(front, at)) continue;
      const isMetal = front.sheet.length === 0 || isWithin(front.sheet, at);
      const asked = plainBands(front, at, now).map((depth) => (isMetal ? depth : 0));
      asked.forEach((depth, band) => {
        const [low, high] = [before.bands[band] ?? Number.NaN, after.bands[band] ?? Number.NaN];
        const rise = high - low;
        const off = (Math.abs(depth - low - rise * share) * run) / Math.hypot(run, rise);
        if (band === asked.length - 1) surface = Math.max(surface, off);
        else bands = Math.max(bands, off);
      });
    }
  });
  return { front: surface, bands };
}

// Levels 3.0 / 2.2 / 1.0 side by side, scribed at the worked places of the method (M3.1), φ 1.
const sideBySide = frontOf({
  stages: [
    { level: 3, opening: [rectangle(-FAR, -FAR, 8 - Math.sqrt(9 - 2.2 ** 2), FAR)] },
    { level: 2.2, opening: [rectangle(-FAR, -FAR, 14 - Math.sqrt(2.2 ** 2 - 1), FAR)] },
    { level: 1, opening: [rectangle(-FAR, -FAR, 17, FAR)] },
  ],
});

test.each([0.0013, 0.005, 0.031])(
  'M2.2 one-sided-quarter: a wall is held within %f mm whichever way the cut goes',
  { tags: ['long'] },
  (tolerance) => {
    const index = indexFront(sideBySide);
    for (let step = 0; step <= 12; step++) {
      const [from, to] = [
        { x: 0.7, y: 0 },
        { x: 25.3, y: 7.9 * step },
      ];
      for (const [start, stop] of [
        [from, to],
        [to, from],
      ] as const) {
        const section = sectionAlong(index, start, stop, { tolerance });
        expect(worstOff(sideBySide, section, { looks: 16 }).front).toBeLessThanOrEqual(tolerance);
      }
    }
  },
);

test('M2.2 band-under-a-wall: what each bath took is held as the front is, though the front above it is smooth', () => {
  const section = sectionAlong(indexFront(sideBySide), { x: 2, y: 1 }, { x: 21, y: 4 }, { tolerance: 0.004 });
  expect(worstOff(sideBySide, section, { looks: 40 }).bands).toBeLessThanOrEqual(0.004);
});

test('M2.2 edge-of-a-floor: where metal ends two rows stand at one place, with the whole depth and with none', () => {
  // The pocket runs out over the sheet's edge at x = 63; 160 mm of cut, so that a halved stretch would still be 0.01 mm long.
  const front = frontOf({
    stages: [{ level: 1.7, opening: [rectangle(11, -FAR, FAR, FAR)] }],
    sheet: [rectangle(-20, -30, 63, 40)],
  });
  const section = sectionAlong(indexFront(front), { x: -40, y: 1 }, { x: 120, y: 1 });
  const there = section.filter(({ x }) => Math.abs(x - 63) < 1e-6);
  expect(there.map(({ depth, thickness }) => [depth, thickness])).toEqual([
    [1.7, 6 - 1.7],
    [0, 0],
  ]);
  expect(there[0]?.distance).toBe(there[1]?.distance);
  expect(worstOff(front, section).front).toBeLessThanOrEqual(0.005);
});

test('M2.2 along-an-edge: a cut along a slanting edge of the sheet is metal all along or nowhere, and is not halved without end', () => {
  const sheet = [
    rectangle(-20, -30, 63, 40).map((span) => {
      const turned = ({ x, y }: Point): Point => ({ x: 0.8 * x - 0.6 * y + 0.1, y: 0.6 * x + 0.8 * y + 0.7 });
      return { ...span, start: turned(span.start), end: turned(span.end) };
    }),
  ];
  const front = frontOf({ stages: [{ level: 1.7, opening: sheet }], sheet });
  const { start, end } = sheet[0]?.[0] ?? { start: { x: 0, y: 0 }, end: { x: 1, y: 0 } };
  const section = sectionAlong(indexFront(front), start, end);
  expect(section.length).toBeLessThan(6);
  expect(new Set(section.map(({ thickness }) => thickness)).size).toBe(1);
});

test('M2.2 side-by-side: along the middle of a land that two pockets eat from both sides there are few rows', () => {
  const front = frontOf({
    stages: [{ level: 4.1, opening: [rectangle(-FAR, -50, -2.3, 50), rectangle(2.3, -50, FAR, 50)] }],
  });
  const section = sectionAlong(indexFront(front), { x: 0, y: -60 }, { x: 0, y: 60 });
  expect(section.length).toBeLessThan(80);
  expect(worstOff(front, section).front).toBeLessThanOrEqual(0.005);
});

test('M2.2, M2.6 random sections of random parts keep within 5 µm of the front and of every bath’s band', {
  tags: ['long'],
  timeout: 60_000 * trials(1),
}, () => {
  const anywhere = fc.double({ min: -12, max: 82, noNaN: true });
  // On the grid that outlines share: along borders, through corners, on lines of symmetry.
  const onGrid = fc.integer({ min: -4, max: 32 }).map((step) => step * 2.5);
  const end = fc.oneof(fc.record({ x: anywhere, y: anywhere }), fc.record({ x: onGrid, y: onGrid }));
  const how = fc.record({
    percent: fc.constantFrom(100, 100, 37, 63),
    masking: fc.constantFrom('peel-next', 're-mask'),
    sheet: fc.constantFrom(randomSheet, TIGHT_SHEET),
  });
  fc.assert(
    fc.property(randomPart, end, end, how, (part, from, to, { percent, masking, sheet }) => {
      const front = frontOfPlan(planOf(part, 'shallow-edge', sheet, masking), 6);
      const now = (endMinute(front) * percent) / 100;
      const section = sectionAlong(indexFront(front), from, to, { minute: now });
      const off = worstOff(front, section, { now });
      expect(Math.max(off.front, off.bands)).toBeLessThanOrEqual(0.005);
    }),
    { numRuns: trials(150), interruptAfterTimeLimit: 45_000 * trials(1) },
  );
});

test('M2.2 at a minute in between, the last band is the front as it stands', () => {
  const section = sectionAlong(
    indexFront(sideBySide),
    { x: 1, y: 0 },
    { x: 22, y: 5 },
    { minute: 1.1 / RATE },
  );
  for (const { bands, depth } of section) expect(bands.at(-1)).toBe(depth);
  expect(worstOff(sideBySide, section, { now: 1.1 / RATE }).front).toBeLessThanOrEqual(0.005);
});
