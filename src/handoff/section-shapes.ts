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

/** Stretches with metal all along. */
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

/** What went in the bath of the stage with that index, stretch by stretch where it took anything. */
export function bandsOf(run: SectionPoints, index: number): BandPoint[][] {
  const line = run.map(({ distance, bands }) => ({
    distance,
    top: index === 0 ? 0 : itemAt(bands, index - 1),
    bottom: itemAt(bands, index),
  }));
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
