/** A planned part at the size of a stamp, as a list of jobs shows it: plain data, so that it can be kept with the job. */
import { type Box, boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { contourPoints } from './region-shape.ts';

export interface PartPicture {
  readonly width: number;
  readonly height: number;
  /** Path of an SVG, even-odd: the edge of the part and its holes. */
  readonly land: string;
  /** Floors of one stage a path, in the stage's colour. */
  readonly floors: readonly { readonly color: string; readonly path: string }[];
}

/** Pixels. */
const SIZE = { width: 132, height: 64 };
/** Clear of the border, so that its line is whole. */
const MARGIN = 1;

/** Of the near face. */
export function partPicture({ outline, cutouts, regions, stages }: PictureOf): PartPicture {
  const near = regions.filter(({ face }) => face !== 'far');
  const edges = outline === null ? near.flatMap(({ contours }) => contours) : [outline, ...cutouts];
  const draw = pathWriter(boxOfPoints(edges.flatMap((contour) => contourPoints(contour))));
  return {
    ...SIZE,
    land: draw(edges),
    floors: stages.flatMap(({ level, color }) => {
      const path = draw(near.filter((region) => region.level === level).flatMap(({ contours }) => contours));
      return path === '' ? [] : [{ color, path }];
    }),
  };
}

type PictureOf = Pick<ShownPlan, 'outline' | 'cutouts' | 'regions' | 'stages'>;

function pathWriter({ minX, minY, maxX, maxY }: Box): (contours: readonly Contour[]) => string {
  const room = { width: SIZE.width - 2 * MARGIN, height: SIZE.height - 2 * MARGIN };
  const scale = Math.min(room.width / (maxX - minX), room.height / (maxY - minY));
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const figure = (value: number) => String(Math.round(10 * value) / 10);
  const place = ({ x, y }: Point) =>
    `${figure(SIZE.width / 2 + (x - middle.x) * scale)} ${figure(SIZE.height / 2 - (y - middle.y) * scale)}`;
  return (contours) =>
    contours
      .map((contour) => {
        const places = contourPoints(contour, scale).map(place);
        return `M${places.filter((each, index) => each !== places[index - 1]).join('L')}Z`;
      })
      .join('');
}
