/** The section as paths to draw: metal, what each stage removed, and what was required. Pixels; pure. */
import { ROUNDING } from '#geometry/tolerances.ts';
import { fitSection } from '#handoff/fit-section.ts';
import { type BandPoint, levelStretches, metalRuns } from '#handoff/section-shapes.ts';
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
  const width = room.width - room.left - room.right;
  const height = room.height - room.top - room.bottom;
  const fit = fitSection({ length, thickness, width, height });
  const exaggeration = isEqual ? 1 : fit.exaggeration;
  return {
    xOf: (distance) => room.left + distance * fit.along,
    yOf: (depth) => room.top + depth * fit.along * exaggeration,
    exaggeration,
  };
}

/** Down to the far face, which lies level only where the sheet does not taper. */
export function metalPath(run: Points, { xOf, yOf }: SectionScale): string {
  const top = run.map(({ distance, depth }) => at(xOf(distance), yOf(depth)));
  const back = run.map(({ distance, depth, thickness }) => at(xOf(distance), yOf(depth + thickness)));
  return `M${[...top, ...back.reverse()].join('L')}Z`;
}

/** What went in the bath of one stage, along one stretch: between the front before and after it. */
export function takenPath(band: readonly BandPoint[], { xOf, yOf }: SectionScale): string {
  const above = band.map(({ distance, top }) => at(xOf(distance), yOf(top)));
  const below = band.map(({ distance, bottom }) => at(xOf(distance), yOf(bottom)));
  return `M${[...above, ...below.reverse()].join('L')}Z`;
}

/** Pixels: a number needs this much of a band. */
const NUMBER_ROOM = { height: 11, width: 12 };

/** Where a stage's number stands in what it took: in the middle of each level stretch that has room for it. */
export function numberPlaces(
  band: readonly BandPoint[],
  { xOf, yOf }: SectionScale,
  least: number = NUMBER_ROOM.height,
): { x: number; y: number }[] {
  const drawn = (point: BandPoint) => ({
    x: xOf(point.distance),
    top: yOf(point.top),
    bottom: yOf(point.bottom),
  });
  return levelStretches(band, 1 / (yOf(1) - yOf(0))).flatMap(([first, last]) => {
    const [from, to] = [drawn(first), drawn(last)];
    const hasRoom = to.x - from.x >= NUMBER_ROOM.width && from.bottom - from.top >= least - ROUNDING;
    return hasRoom ? [{ x: (from.x + to.x) / 2, y: (from.top + from.bottom) / 2 }] : [];
  });
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

/** The same of the far face, up from its own surface, as long as metal joins. */
export function farAskedPath(points: Points, { xOf, yOf }: SectionScale): string {
  return metalRuns(points)
    .map((run) =>
      run.flatMap(({ distance, far }) =>
        far?.target === undefined ? [] : [at(xOf(distance), yOf(far.sheet - far.target))],
      ),
    )
    .map((places) => (places.length === 0 ? '' : `M${places.join('L')}`))
    .join('');
}

/** Hundredths of a pixel keep paths short. */
function at(x: number, y: number): string {
  return `${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100}`;
}
