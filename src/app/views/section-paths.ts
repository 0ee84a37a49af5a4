/** The section as paths to draw: metal, what each stage took, and what was asked. Pixels; pure. */
import { itemAt } from '#geometry/assert.ts';
import type { Section } from '#run/section-job.ts';

type Points = Section['points'];

export interface SectionScale {
  readonly xOf: (distance: number) => number;
  readonly yOf: (depth: number) => number;
  /** Heights are drawn this many times larger than lengths. */
  readonly exaggeration: number;
}

export interface SectionRoom {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface ScaleAsk {
  readonly length: number;
  readonly thickness: number;
  readonly room: SectionRoom;
  readonly isEqual: boolean;
}

/** As long as the strip is wide; as high as it has room for with a round factor, or true to the lengths. */
export function sectionScale({ length, thickness, room, isEqual }: ScaleAsk): SectionScale {
  const across = room.width - room.left - room.right;
  const up = room.height - room.top - room.bottom;
  const fitted = (up / thickness) * (length / across);
  const exaggeration = isEqual ? Math.min(1, fitted) : roundDown(fitted);
  // A cut so short that its heights have no room at equal scale is drawn narrower instead.
  const perMm = isEqual && fitted < 1 ? (across / length) * fitted : across / length;
  const shown = isEqual ? 1 : exaggeration;
  return {
    xOf: (distance) => room.left + distance * perMm,
    yOf: (depth) => room.top + depth * perMm * shown,
    exaggeration: shown,
  };
}

/** Two figures, not above: enough to use the room, few enough to be said. */
function roundDown(factor: number): number {
  const step = 10 ** (Math.floor(Math.log10(factor)) - 1);
  return Number((Math.floor(factor / step + 1e-9) * step).toPrecision(2));
}

/** Stretches of the section in which there is metal all along. */
export function metalRuns(points: Points): Points[] {
  const runs: Points[number][][] = [];
  let isMetal = false;
  for (const point of points) {
    const now = point.target !== undefined;
    if (now && !isMetal) runs.push([]);
    if (now) runs.at(-1)?.push(point);
    isMetal = now;
  }
  return runs;
}

/** Down to the far face, which lies level only where the sheet does not taper. */
export function metalPath(run: Points, { xOf, yOf }: SectionScale): string {
  const top = run.map(({ distance, depth }) => at(xOf(distance), yOf(depth)));
  const back = run.map(({ distance, depth, thickness }) => at(xOf(distance), yOf(depth + thickness)));
  return `M${[...top, ...back.reverse()].join('L')}Z`;
}

/** What went in the bath of the stage with that index: between the front before and after it. Empty where it took nothing. */
export function takenPath(run: Points, stage: number, { xOf, yOf }: SectionScale): string {
  const above = run.map(({ bands }) => (stage === 0 ? 0 : itemAt(bands, stage - 1)));
  const below = run.map(({ bands }) => itemAt(bands, stage));
  if (below.every((depth, i) => depth <= itemAt(above, i))) return '';
  const corner = (depths: readonly number[]) => (point: Points[number], i: number) =>
    at(xOf(point.distance), yOf(itemAt(depths, i)));
  return `M${[...run.map(corner(above)), ...run.map(corner(below)).reverse()].join('L')}Z`;
}

/** Pixels: a number needs this much of a band. */
const NUMBER_ROOM = { height: 11, width: 12 };

/** Where a stage's number stands in what it took: amid each stretch that has room for it. */
export function numberPlaces(
  run: Points,
  stage: number,
  { xOf, yOf }: SectionScale,
): { x: number; y: number }[] {
  const places: { x: number; y: number }[] = [];
  let open: { readonly from: number; readonly top: number; readonly bottom: number } | undefined;
  const close = (to: number) => {
    if (open !== undefined && to - open.from >= NUMBER_ROOM.width) {
      places.push({ x: (open.from + to) / 2, y: (open.top + open.bottom) / 2 });
    }
    open = undefined;
  };
  let last = 0;
  for (const { distance, bands } of run) {
    const top = yOf(stage === 0 ? 0 : itemAt(bands, stage - 1));
    const bottom = yOf(itemAt(bands, stage));
    const x = xOf(distance);
    const hasRoom = bottom - top >= NUMBER_ROOM.height;
    // Another level is another stretch: the number keeps clear of the step.
    const isOther =
      open !== undefined && (Math.abs(top - open.top) > 1 || Math.abs(bottom - open.bottom) > 1);
    if (!hasRoom || isOther) close(last);
    if (hasRoom) open ??= { from: x, top, bottom };
    last = x;
  }
  close(last);
  return places;
}

export function askedPath(asked: Section['asked'], { xOf, yOf }: SectionScale): string {
  let path = '';
  let joins = false;
  for (const { start, end, depth } of asked) {
    if (depth !== undefined) {
      path += `${joins ? 'L' : 'M'}${at(xOf(start), yOf(depth.start))}L${at(xOf(end), yOf(depth.end))}`;
    }
    joins = depth !== undefined;
  }
  return path;
}

/** Hundredths of a pixel keep paths short. */
function at(x: number, y: number): string {
  return `${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100}`;
}
