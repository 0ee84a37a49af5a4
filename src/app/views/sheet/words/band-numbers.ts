/** Numbers of the stages on the bands of the cut face, wherever a band has room for one. */
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import type { SectionLine } from '#app/state/workbench-state.ts';
import { numberPlaces } from '#app/views/section/section-paths.ts';
import type { Point } from '#geometry/point.ts';
import { bandsOf, metalRuns } from '#handoff/section-shapes.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import type { Section } from '#run/section-job.ts';

export interface BandNumber {
  readonly stage: number;
  readonly color: string;
  /** On the sheet, mm. */
  readonly at: Point;
  /** Height drawn, mm. */
  readonly z: number;
}

interface BandAsk {
  readonly section: Section;
  readonly cut: SectionLine;
  readonly stages: readonly ShownStage[];
  readonly pose: ViewPose;
  readonly exaggeration: number;
}

/** px */
const LOWEST_BAND = 10.2;

export function bandNumbers({ section, cut, stages, pose, exaggeration }: BandAsk): BandNumber[] {
  const length = Math.hypot(cut.to.x - cut.from.x, cut.to.y - cut.from.y);
  const way = { x: (cut.to.x - cut.from.x) / length, y: (cut.to.y - cut.from.y) / length };
  const size = { width: 0, height: 0 };
  const [start, end] = [pixelOf(pose, size, cut.from), pixelOf(pose, size, cut.to)];
  const along = Math.abs(end.x - start.x) / length;
  const upright = exaggeration * pose.pixelsPerMm * Math.sin(pose.tilt);
  const scale = {
    xOf: (distance: number) => distance * along,
    yOf: (depth: number) => depth * upright,
    exaggeration,
  };
  const runs = metalRuns(section.points);
  const bands = stages.flatMap(({ number, color }, index) =>
    runs.flatMap((run) => bandsOf(run, index).map((band) => ({ number, color, band }))),
  );
  if (along === 0) return [];
  return bands.flatMap(({ number, color, band }) =>
    numberPlaces(band, scale, LOWEST_BAND).map(({ x, y }) => ({
      stage: number,
      color,
      at: { x: cut.from.x + (way.x * x) / along, y: cut.from.y + (way.y * x) / along },
      z: (-y / upright) * exaggeration,
    })),
  );
}
