/** Fills of a large part by their colours: a plate with a pocket of each of two stages, an island in the first, and a cutout. */
import { expect, test } from 'vitest';
import { bathGroups, regionGroups } from '#app/scene/large/fill-groups.ts';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { regionShapes } from '#app/state/region-shape.ts';
import { reverseSpans } from '#geometry/span.ts';
import { contourOfLoop } from '#handoff/contour.ts';
import type { ShownPlan, ShownRegion } from '#job/formats/plan-file.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

const theme = sceneTheme(false);
const [plate, deep, island, shallow, cutout] = [
  rectangle(0, 0, 90, 40),
  rectangle(5, 6, 35, 31),
  circle(20, 15, 3),
  rectangle(50, 9, 71, 30),
  circle(82, 20, 2),
].map(contourOfLoop);
const rim = contourOfLoop(reverseSpans(circle(20, 15, 3.4)));

const regions = [
  ['R1', 0, plate],
  ['R2', 2.2, deep],
  ['R3', 0, island],
  ['R4', 0.9, shallow],
].map(([id, level, contour]) => ({
  id,
  level,
  contours: [contour],
})) as Partial<ShownRegion>[] as ShownRegion[];
const plan = {
  masking: 'peel-next',
  outline: plate,
  cutouts: [cutout],
  regions,
  stages: [
    { number: 1, color: '#a87109', startMinute: 0, regions: ['R2'], piece: [deep, rim] },
    { number: 2, color: '#2a7f4f', startMinute: 31, regions: ['R4'], piece: [shallow] },
  ],
} as unknown as ShownPlan;
const [first, second] = ['#a87109', '#2a7f4f'].map((color) => lookOf(color, theme).floor);

const said = (groups: ReturnType<typeof bathGroups>) =>
  groups.map(({ color, isDotted, sized }) => [color, isDotted, ...sized.contours]);

test('after the run each region has the colour of its stage, land and cutouts their own', () => {
  expect(said(regionGroups(plan, regionShapes(regions, []), theme))).toEqual([
    [theme.land, false, plate, island],
    [first, false, deep],
    [second, false, shallow],
    [theme.ground, false, cutout],
  ]);
});

test('without a plan all is land', () => {
  const groups = regionGroups(undefined, regionShapes(regions, []), theme);
  expect(said(groups)).toEqual([[theme.land, false, plate, deep, shallow, island]]);
});

test('in the bath the piece peeled last has its colour, one before it is dotted metal, and islands stay under maskant', () => {
  expect(said(bathGroups(plan, 12, theme))).toEqual([
    [theme.maskant, false, plate, rim],
    [first, false, deep],
    [theme.ground, false, cutout],
  ]);
  expect(said(bathGroups(plan, 40, theme))).toEqual([
    [theme.maskant, false, plate, rim],
    [theme.metal, true, deep],
    [second, false, shallow],
    [theme.ground, false, cutout],
  ]);
});

test('with a new coat for each stage its own window alone is bare', () => {
  const remasked = { ...plan, masking: 're-mask' } as ShownPlan;
  expect(said(bathGroups(remasked, 40, theme))).toEqual([
    [theme.maskant, false, plate],
    [second, false, shallow],
    [theme.ground, false, cutout],
  ]);
});
