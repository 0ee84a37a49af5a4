/** What a section shows, as stretches along the cut: metal, and what each stage took. For whoever draws it. */
import { itemAt } from '#geometry/assert.ts';
import type { NamedSection } from './named-section.ts';

export type SectionPoints = NamedSection['points'];

/** Depths between which a stage took metal, at one distance along the cut. */
export interface BandPoint {
  readonly distance: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * What a place shows of its two fronts, as depths from the near face. Where they have met, the metal between them went to whichever came
 * first: each is drawn as far as half of what they pass each other by.
 */
export interface ShownFronts {
  readonly near: { readonly depth: number; readonly bands: readonly number[] };
  readonly far: { readonly depth: number; readonly bands: readonly number[] };
  /** The far face as it came, from the near one. */
  readonly sheet: number;
}

export function shownFronts({ depth, bands, thickness, far }: SectionPoints[number]): ShownFronts {
  if (far === undefined) {
    const sheet = depth + thickness;
    return { near: { depth, bands }, far: { depth: sheet, bands: bands.map(() => sheet) }, sheet };
  }
  const { sheet } = far;
  let met: { readonly near: number; readonly far: number } | undefined;
  const shown = bands.map((near, index) => {
    const over = near + itemAt(far.bands, index) - sheet;
    if (over > 0) met ??= { near: near - over / 2, far: itemAt(far.bands, index) - over / 2 };
    return met ?? { near, far: itemAt(far.bands, index) };
  });
  const last = shown.at(-1) ?? { near: depth, far: far.depth };
  return {
    near: { depth: last.near, bands: shown.map((each) => each.near) },
    far: { depth: sheet - last.far, bands: shown.map((each) => sheet - each.far) },
    sheet,
  };
}

/** Stretches with metal all along: what was there before the etch. */
export function metalRuns(points: SectionPoints): SectionPoints[number][][] {
  const runs: SectionPoints[number][][] = [];
  let isMetal = false;
  for (const point of points) {
    const now = point.target !== undefined;
    if (now && !isMetal) runs.push([]);
    if (now) runs.at(-1)?.push(point);
    isMetal = now;
  }
  return runs.filter((run) => run.length > 1);
}

/** The parts of a run where metal is left between the fronts; the ends, where they meet, belong to them. */
export function leftRuns(run: SectionPoints): SectionPoints[number][][] {
  const runs: SectionPoints[number][][] = [];
  let isLeft = false;
  run.forEach((point, index) => {
    const before = run[index - 1];
    const now = point.far === undefined || point.thickness > 0;
    if (now && !isLeft) runs.push(before === undefined ? [] : [before]);
    if (now || isLeft) runs.at(-1)?.push(point);
    isLeft = now;
  });
  return runs.filter((each) => each.length > 1);
}

/** What went in the bath of the stage with that index, from both faces, stretch by stretch where it took anything. */
export function bandsOf(run: SectionPoints, index: number): BandPoint[][] {
  const fronts = run.map((point) => ({ distance: point.distance, ...shownFronts(point) }));
  const near = fronts.map(({ distance, near: { bands } }) => ({
    distance,
    top: index === 0 ? 0 : itemAt(bands, index - 1),
    bottom: itemAt(bands, index),
  }));
  if (run.every(({ far }) => far === undefined)) return takenStretches(near);
  const far = fronts.map(({ distance, far: { bands }, sheet }) => ({
    distance,
    top: itemAt(bands, index),
    bottom: index === 0 ? sheet : itemAt(bands, index - 1),
  }));
  return [...takenStretches(near), ...takenStretches(far)];
}

function takenStretches(line: readonly BandPoint[]): BandPoint[][] {
  const stretches: BandPoint[][] = [];
  line.forEach((point, at) => {
    const isTaken = point.bottom > point.top;
    const before = line[at - 1];
    if (isTaken && (before === undefined || before.bottom <= before.top))
      stretches.push(before === undefined ? [] : [before]);
    const isEnd = !isTaken && before !== undefined && before.bottom > before.top;
    if (isTaken || isEnd) stretches.at(-1)?.push(point);
  });
  return stretches;
}

/** First and last place of each part of a band that stays at one level, give or take `within` mm: a number keeps clear of steps. */
export function levelStretches(band: readonly BandPoint[], within: number): [BandPoint, BandPoint][] {
  const stretches: [BandPoint, BandPoint][] = [];
  for (const point of band) {
    const open = stretches.at(-1);
    if (open !== undefined && isLevel(open[0], point, within)) open[1] = point;
    else stretches.push([point, point]);
  }
  return stretches;
}

function isLevel(a: BandPoint, b: BandPoint, within: number): boolean {
  return Math.abs(a.top - b.top) < within && Math.abs(a.bottom - b.bottom) < within;
}
