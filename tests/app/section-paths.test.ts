import { describe, expect, it } from 'vitest';
import {
  askedPath,
  farAskedPath,
  numberPlaces,
  sectionScale,
  takenPath,
} from '#app/views/section/section-paths.ts';
import { bandsOf, metalRuns } from '#handoff/section-shapes.ts';
import type { Section } from '#run/section-job.ts';

type SectionPoint = Section['points'][number];

const point = (distance: number, depth: number, target: number | undefined): SectionPoint => ({
  distance,
  x: distance,
  y: 0,
  depth,
  stage: 1,
  bands: [depth / 2, depth],
  thickness: 4 - depth,
  target,
});

const room = { width: 220, height: 60, left: 10, right: 10, top: 5, bottom: 5 };

describe('the section drawn', () => {
  it('fits its length and a round factor of heights into the room, and states the factor', () => {
    const scale = sectionScale({ length: 100, thickness: 4, room, isEqual: false });
    // 2 px a mm; 50 px for 4 mm are 12.5 px a mm: 6.25 times, said as 6.2.
    expect(scale.exaggeration).toBe(6.2);
    expect([scale.xOf(0), scale.xOf(100)]).toEqual([10, 210]);
    expect(scale.yOf(4)).toBeCloseTo(5 + 4 * 2 * 6.2, 9);
  });

  it('draws heights and lengths to one scale when chosen, narrower where a short cut has no room', () => {
    const long = sectionScale({ length: 100, thickness: 4, room, isEqual: true });
    expect(long.yOf(1) - long.yOf(0)).toBeCloseTo(long.xOf(1) - long.xOf(0), 9);
    const short = sectionScale({ length: 2, thickness: 4, room, isEqual: true });
    expect(short.yOf(1) - short.yOf(0)).toBeCloseTo(short.xOf(1) - short.xOf(0), 9);
    expect(short.yOf(4)).toBeCloseTo(55, 9);
  });

  it('leaves the gap of a hole open, draws what each bath removed, and steps the requirement', () => {
    const points = [
      point(0, 1, 1),
      point(10, 1, 1),
      point(10, 0, undefined),
      point(20, 0, undefined),
      point(20, 0, 0),
      point(30, 0, 0),
    ];
    const runs = metalRuns(points);
    expect(runs.map((run) => run.map(({ distance }) => distance))).toEqual([
      [0, 10],
      [20, 30],
    ]);
    const scale = { xOf: (x: number) => x, yOf: (depth: number) => depth, exaggeration: 1 };
    const taken = bandsOf(runs[0] ?? [], 1).map((band) => takenPath(band, scale));
    expect(taken).toEqual(['M0 0.5L10 0.5L10 1L0 1Z']);
    expect(bandsOf(runs[1] ?? [], 1)).toEqual([]);
    const asked = [
      { start: 0, end: 10, depth: { start: 1, end: 1.5 } },
      { start: 10, end: 20, depth: undefined },
      { start: 20, end: 25, depth: { start: 0, end: 0 } },
      { start: 25, end: 30, depth: { start: 2, end: 2 } },
    ];
    expect(askedPath(asked, scale)).toBe('M0 1L10 1.5M20 0L25 0L25 2L30 2');
  });

  it('draws what is asked of the far face up from its own surface, apart where there is no metal', () => {
    const withFar = (distance: number, target: number | undefined, asked: number): SectionPoint => ({
      ...point(distance, 0, target),
      far: { depth: asked, stage: 1, bands: [asked / 2, asked], target: asked, sheet: 4 },
    });
    const points = [
      withFar(0, 0, 0.5),
      withFar(6, 0, 0.5),
      withFar(6, 0, 1.5),
      withFar(9, 1, 1.5),
      { ...point(9, 0, undefined) },
      { ...point(12, 0, undefined) },
      withFar(12, 0, 0),
      withFar(15, 0, 0),
    ];
    const scale = { xOf: (x: number) => x, yOf: (depth: number) => 10 * depth, exaggeration: 10 };
    expect(farAskedPath(points, scale)).toBe('M0 35L6 35L6 25L9 25M12 40L15 40');
    expect(farAskedPath([point(0, 1, 1), point(5, 1, 1)], scale)).toBe('');
  });

  it('numbers each level stretch of a band that has room for it, in its middle', () => {
    const stretch = (from: number, to: number, bottom: number) => [
      { distance: from, top: 0, bottom },
      { distance: to, top: 0, bottom },
    ];
    // 10 px a mm each way: a step of 1 mm parts two stretches, and the third is too short for a number.
    const scale = { xOf: (x: number) => 10 * x, yOf: (depth: number) => 10 * depth, exaggeration: 1 };
    const band = [...stretch(0, 4, 2), ...stretch(4, 10, 3), ...stretch(10, 11, 2)];
    expect(numberPlaces(band, scale)).toEqual([
      { x: 20, y: 10 },
      { x: 70, y: 15 },
    ]);
  });

  it('draws heights to the scale of lengths where a short cut has no room for more', () => {
    const scale = sectionScale({ length: 2, thickness: 4, room, isEqual: false });
    expect(scale.exaggeration).toBe(1);
    expect(scale.yOf(4)).toBeCloseTo(55, 9);
  });
});
