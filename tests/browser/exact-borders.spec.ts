/**
 * Arcs are arcs on screen at any zoom: fill, line, mark and pointer agree with the plan within half a pixel. Circles of 5 to 2000 mm
 * are looked at with 0.01 mm to the pixel, at 500 places chosen at random; where each should stand is the circle's own equation.
 */
import type { Page } from '@playwright/test';
import { CASING, MARK, SCRIBE_WIDTH } from '#app/scene/line-looks.ts';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { distance, type Point } from '#geometry/point.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { colorsAt, type Rgb } from '#support/browser/sheet-pixels.ts';
import { dropFiles, expect, savedText, sheetOf, statusOf, test } from '#support/browser/workbench-page.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const PIXELS_PER_MM = 100;
const HALF_A_PIXEL = 0.5;
const PLACES_A_VIEW = 25;
const VIEWS = 5;

const circles = [
  { center: { x: 4010, y: 7 }, radius: 5 },
  { center: { x: 3900, y: 310 }, radius: 60 },
  { center: { x: 3500, y: 1200 }, radius: 400 },
  { center: { x: 900, y: -20 }, radius: 2000 },
];
const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [-1500, -2200], [4300, 2200]),
    ...circles.map(({ center, radius }) => circle('ROUND', [center.x, center.y], radius)),
  ],
});
const job = { ...buoyLidJob, requirements: [{ layer: 'ROUND', depth: 1.2 }] };

/** Fixed: the same 500 places at each run. */
function randomly(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

test('500 places of borders of R 5 to R 2000 at 0.01 mm a pixel: fill, line, mark and pointer', async ({
  workbench,
}) => {
  test.slow();
  // The view goes where it is sent at once.
  await workbench.emulateMedia({ reducedMotion: 'reduce' });
  await dropFiles(workbench, [
    { name: 'buoy-lid.dxf', text: drawing },
    { name: 'buoy-lid.job.json', text: JSON.stringify(job) },
  ]);
  await expect(statusOf(workbench)).toContainText(/5 regions.*planned in/);
  const plan: PlanFile = JSON.parse(await savedText(workbench, 'plan.json'));
  const [stage] = plan.stages;
  if (stage === undefined) throw new Error('there is one stage');
  const random = randomly(20261127);
  const worst = { border: 0, line: 0, mark: 0 };
  let [places, linesAlone, marks] = [0, 0, 0];
  for (const { center, radius } of circles) {
    const line = stage.lines.find(
      ({ vertices }) => Math.abs(distance(pointOf(vertices[0]), center) - radius) < 3,
    );
    if (line === undefined) throw new Error(`the circle of ${radius} mm has a scribe line`);
    const lineRadius = distance(pointOf(line.vertices[0]), center);
    for (let view = 0; view < VIEWS; view++) {
      const middle = 2 * Math.PI * random();
      const sight = await lookAt(workbench, onCircle(center, (radius + lineRadius) / 2, middle));
      const reach = Math.min(Math.PI, 1.2 / radius);
      const angles = Array.from({ length: PLACES_A_VIEW }, () => middle + (2 * random() - 1) * reach);
      const profiles = await profilesAcross(workbench, sight, center, [
        ...angles.map((angle) => ({ angle, radius })),
        ...angles.map((angle) => ({ angle, radius: lineRadius })),
      ]);
      const theme = sceneTheme(false);
      const floor = rgbOf(lookOf(stage.color, theme).floor);
      for (const [index] of angles.entries()) {
        worst.border = Math.max(
          worst.border,
          Math.abs(
            borderIn(profiles[index] ?? [], {
              floor,
              land: rgbOf(theme.land),
              line: rgbOf(theme.linework),
            }),
          ),
        );
        places += 1;
        const across = profiles[index + angles.length] ?? [];
        if (isAtMark(across, floor)) continue;
        worst.line = Math.max(worst.line, Math.abs(middleOf(across, floor)));
        linesAlone += 1;
      }
      const ticks = await ticksSeen(workbench, sight, { center, radius: lineRadius, middle, floor });
      const across = await profilesAcross(
        workbench,
        sight,
        center,
        ticks.map((angle) => ({ angle, radius: lineRadius })),
      );
      for (const profile of across) {
        const { from, to } = strokeIn(profile, floor);
        worst.mark = Math.max(worst.mark, Math.abs(middleOf(profile, floor)));
        expect(to - from).toBeGreaterThan(MARK.length - 1.5);
        marks += 1;
      }
      await checkPointer(workbench, sight, { center, radius, angles });
    }
  }
  console.log(
    `${places} places, ${linesAlone} of them off the marks, ${marks} ticks; worst by ${JSON.stringify(worst)} px`,
  );
  expect(places).toBe(500);
  expect(linesAlone).toBeGreaterThan(400);
  expect(marks).toBeGreaterThan(30);
  expect(worst.border).toBeLessThan(HALF_A_PIXEL);
  expect(worst.line).toBeLessThan(HALF_A_PIXEL);
  expect(worst.mark).toBeLessThan(HALF_A_PIXEL);
});

/** Which point of the drawing the sheet's upper left corner shows, as the readings at two places say it, and the scale. */
interface Sight {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  /** Of the drawing, at the sheet's upper left corner. */
  readonly corner: Point;
}

async function sightOf(page: Page): Promise<Sight> {
  const box_ = await sheetOf(page).boundingBox();
  if (box_ === null) throw new Error('the sheet is not laid out');
  const { x: left, y: top, width, height } = box_;
  const near = { x: 20, y: 70 };
  const far = { x: Math.floor(width) - 20, y: Math.floor(height) - 20 };
  const [a, b] = [
    await readAt(page, left + near.x, top + near.y),
    await readAt(page, left + far.x, top + far.y),
  ];
  const scale = (far.x - near.x) / (b.x - a.x);
  const perY = (far.y - near.y) / (a.y - b.y);
  // Both ways agree as far as the figures read go.
  expect(Math.abs(perY / scale - 1)).toBeLessThan(0.02);
  return { left, top, width, height, scale, corner: { x: a.x - near.x / scale, y: a.y + near.y / scale } };
}

async function readAt(page: Page, x: number, y: number): Promise<Point> {
  await page.mouse.move(x, y);
  const [, readX = '', readY = ''] = /x (-?[\d.]+)\s+y (-?[\d.]+)/.exec(await readingOf(page)) ?? [];
  return { x: Number(readX), y: Number(readY) };
}

async function readingOf(page: Page): Promise<string> {
  return (await page.locator('.hover-reading').textContent()) ?? '';
}

function pixelOn({ corner, scale }: Sight, { x, y }: Point): Point {
  return { x: (x - corner.x) * scale, y: (corner.y - y) * scale };
}

function isSeen(sight: Sight, point: Point): boolean {
  const { x, y } = pixelOn(sight, point);
  return x > 30 && y > 30 && x < sight.width - 30 && y < sight.height - 30;
}

/** From the whole part down to the place by the wheel, and the scale made exact. */
async function lookAt(page: Page, place: Point): Promise<Sight> {
  await sheetOf(page).focus();
  await page.keyboard.press('Home');
  let sight = await sightOf(page);
  while (sight.scale < PIXELS_PER_MM * 0.999) {
    const at = pixelOn(sight, place);
    const x = Math.min(sight.width - 5, Math.max(5, at.x));
    const y = Math.min(sight.height - 5, Math.max(5, at.y));
    const factor = Math.min(12, PIXELS_PER_MM / sight.scale);
    await page.mouse.move(sight.left + x, sight.top + y);
    await page.mouse.wheel(0, -Math.log(factor) / 0.0016);
    await page.waitForTimeout(60);
    sight = await sightOf(page);
  }
  // The wheel keeps the place under the pointer, which may be at the border of the view.
  const at = pixelOn(sight, place);
  await page.mouse.move(sight.left + sight.width / 2, sight.top + sight.height / 2);
  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(sight.left + sight.width - at.x, sight.top + sight.height - at.y, { steps: 3 });
  await page.mouse.up({ button: 'middle' });
  // Marks are made for the scale that the view rests at.
  await page.waitForTimeout(400);
  sight = await sightOf(page);
  // Off the sheet, so that the ring round what is pointed at is not taken for land.
  await page.mouse.move(sight.left + sight.width / 2, 4);
  await expect(page.locator('.hover-reading')).not.toContainText('to 1.20');
  await waitForRest(page);
  return sight;
}

/** Until two pictures a while apart are the same: on a busy machine marks follow the view late. */
async function waitForRest(page: Page): Promise<void> {
  const canvas = page.locator('.sheet-canvas canvas');
  let before = await canvas.screenshot();
  await expect(async () => {
    await page.waitForTimeout(200);
    const now = await canvas.screenshot();
    const isSame = now.equals(before);
    before = now;
    expect(isSame).toBe(true);
  }).toPass({ intervals: [0] });
}

/** Pixels either side that a profile shows, and how finely. */
const REACH = 10;
const STEP = 0.25;

/** Colours along the way out from the middle of a circle, from inside to outside, round places of a circle about it. */
async function profilesAcross(
  page: Page,
  sight: Sight,
  center: Point,
  places: readonly { readonly angle: number; readonly radius: number }[],
): Promise<Rgb[][]> {
  const steps = Array.from({ length: (2 * REACH) / STEP + 1 }, (_, index) => index * STEP - REACH);
  const at = places.flatMap(({ angle, radius }) =>
    steps.map((step) => pixelOn(sight, onCircle(center, radius + step / sight.scale, angle))),
  );
  const colors = await colorsAt(page, at);
  return places.map((_, index) => colors.slice(index * steps.length, (index + 1) * steps.length));
}

/** Angles at which something crosses the line: past its casing, on either side, there is more than floor. */
async function ticksSeen(
  page: Page,
  sight: Sight,
  line: { center: Point; radius: number; middle: number; floor: Rgb },
): Promise<number[]> {
  const { center, radius, middle, floor } = line;
  const turn = 0.5 / sight.scale / radius;
  const count = Math.min(2400, Math.floor(Math.PI / turn));
  const angles = Array.from({ length: count }, (_, index) => middle + (index - count / 2) * turn).filter(
    (angle) => isSeen(sight, onCircle(center, radius, angle)),
  );
  const beside = await colorsAt(
    page,
    [-3.5, 3.5].flatMap((off) =>
      angles.map((angle) => pixelOn(sight, onCircle(center, radius + off / sight.scale, angle))),
    ),
  );
  const strength = angles.map((_, index) =>
    Math.min(apart(beside[index] ?? floor, floor), apart(beside[index + angles.length] ?? floor, floor)),
  );
  const isTop = (index: number) =>
    [-3, -2, -1, 1, 2, 3].every(
      (by) => (strength[index + by] ?? 0) < (strength[index] ?? 0) + (by < 0 ? 1e-9 : 0),
    );
  return angles.filter((_, index) => (strength[index] ?? 0) > 60 && isTop(index));
}

/** Where floor turns to land, px outwards: colours add up to so much floor, so much land, and the line between them. */
function borderIn(
  profile: readonly Rgb[],
  { floor, land, line }: { readonly floor: Rgb; readonly land: Rgb; readonly line: Rgb },
): number {
  // Each colour as shares of the three: least squares over the three channels, shares adding up to 1.
  let shift = 0;
  for (const color of profile) {
    const [f, l] = sharesOf(color, floor, land, line);
    shift += (f - l) * STEP;
  }
  return shift / 2;
}

function sharesOf(color: Rgb, floor: Rgb, land: Rgb, line: Rgb): [floor: number, land: number] {
  const minus = (a: Rgb, b: Rgb) => a.map((each, index) => each - (b[index] ?? 0));
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, each, index) => sum + each * (b[index] ?? 0), 0);
  const [u, v, w] = [minus(floor, line), minus(land, line), minus(color, line)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const det = uu * vv - uv * uv;
  return [(uw * vv - vw * uv) / det, (vw * uu - uw * uv) / det];
}

/** Middle of what is drawn on the floor, px outwards. */
function middleOf(profile: readonly Rgb[], floor: Rgb): number {
  let [sum, moment] = [0, 0];
  profile.forEach((color, index) => {
    const weight = Math.max(0, apart(color, floor) - 6);
    sum += weight;
    moment += weight * (index * STEP - REACH);
  });
  return moment / sum;
}

/** Beside the edge of a mark its own grey counts with the line's: there the mark is measured, along its middle. */
function isAtMark(profile: readonly Rgb[], floor: Rgb): boolean {
  const pastCasing = SCRIBE_WIDTH.usual / 2 + CASING + 1.5;
  return profile.some(
    (color, index) => Math.abs(index * STEP - REACH) > pastCasing && apart(color, floor) > 6,
  );
}

/** First and last place of the stroke on the floor, px outwards. */
function strokeIn(profile: readonly Rgb[], floor: Rgb): { from: number; to: number } {
  const strongest = Math.max(...profile.map((color) => apart(color, floor)));
  const marked = profile.flatMap((color, index) =>
    apart(color, floor) > Math.min(60, strongest / 3) ? [index * STEP - REACH] : [],
  );
  return { from: marked[0] ?? Number.NaN, to: marked.at(-1) ?? Number.NaN };
}

function apart(a: Rgb, b: Rgb): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** Whole pixels beside each place, on the side that the circle's equation says, by more than half a pixel. */
async function checkPointer(
  page: Page,
  sight: Sight,
  { center, radius, angles }: { center: Point; radius: number; angles: readonly number[] },
): Promise<void> {
  for (const [index, angle] of angles.entries()) {
    const side = index % 2 === 0 ? 1 : -1;
    const near = pixelOn(sight, onCircle(center, radius + (side * 1.2) / sight.scale, angle));
    const [x, y] = [Math.round(sight.left + near.x), Math.round(sight.top + near.y)];
    const there = {
      x: sight.corner.x + (x - sight.left) / sight.scale,
      y: sight.corner.y - (y - sight.top) / sight.scale,
    };
    const outwards = (distance(there, center) - radius) * sight.scale;
    if (Math.abs(outwards) < HALF_A_PIXEL) continue;
    await page.mouse.move(x, y);
    expect(await readingOf(page), `${outwards.toFixed(2)} px out of R ${radius}`).toContain(
      outwards < 0 ? 'to 1.20' : 'land',
    );
  }
}

function onCircle({ x, y }: Point, radius: number, angle: number): Point {
  return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
}

function pointOf(vertex: readonly [number, number, number] | undefined): Point {
  return { x: vertex?.[0] ?? 0, y: vertex?.[1] ?? 0 };
}

function rgbOf(color: string): Rgb {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
  return [red, green, blue];
}
