/**
 * The face at which the relief is cut open, from the section's own geometry: metal below the front, and above it what each stage
 * took, as upright strips between those points of the section that are seen. Heights in mm, not yet drawn larger; pure.
 */

import { linearRgb } from '#app/scene/linear-rgb.ts';
import type { SceneCut } from '#app/scene/scene-picture.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type BandPoint, bandsOf, metalRuns } from '#handoff/section-shapes.ts';
import { type SectionScale, thinRun } from './thin-run.ts';

export interface CutFace {
  /** Three numbers a corner, three corners a triangle. */
  readonly positions: Float32Array;
  /** Red, green, blue, and 1 where hatched. */
  readonly colors: Float32Array;
  /** Six numbers a segment: round the whole face, along the front, and between the bands. */
  readonly outline: Float32Array;
  readonly front: Float32Array;
}

interface FaceColors {
  readonly metal: string;
  /** By stage. */
  readonly stages: readonly string[];
}

type Run = ReturnType<typeof metalRuns>[number];

export function cutFace(cut: SceneCut, { metal, stages }: FaceColors, scale: SectionScale): CutFace {
  const runs = metalRuns(cut.section.points).map((run) => thinRun(run, scale));
  const place = placeOn(cut);
  const positions: number[] = [];
  const colors: number[] = [];
  const fill = (strip: readonly Strip[], color: readonly number[]) => {
    for (let at = 1; at < strip.length; at++) {
      const quad = quadOf(itemAt(strip, at - 1), itemAt(strip, at), place);
      positions.push(...quad);
      for (let corner = 0; corner < quad.length / 3; corner++) colors.push(...color);
    }
  };
  const outline: number[] = [];
  const front: number[] = [];
  for (const run of runs) {
    fill(
      run.map(({ distance, depth, thickness }) => ({ distance, top: depth, bottom: depth + thickness })),
      [...linearRgb(metal), 1],
    );
    stages.forEach((color, index) => {
      for (const band of bandsOf(run, index)) {
        fill(band, [...linearRgb(color), 0]);
        front.push(...lineOf(band, ({ bottom }) => bottom, place));
      }
    });
    outline.push(...borderOf(run, place));
  }
  return {
    positions: new Float32Array(positions),
    colors: new Float32Array(colors),
    outline: new Float32Array(outline),
    front: new Float32Array(front),
  };
}

type Strip = BandPoint;
type Place = (distance: number) => Point;

function placeOn({ from, to }: SceneCut): Place {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return (distance) => ({ x: from.x + x * distance, y: from.y + y * distance });
}

function quadOf(a: Strip, b: Strip, place: Place): number[] {
  const [p, q] = [place(a.distance), place(b.distance)];
  return [
    ...[p.x, p.y, -a.top, p.x, p.y, -a.bottom, q.x, q.y, -b.bottom],
    ...[p.x, p.y, -a.top, q.x, q.y, -b.bottom, q.x, q.y, -b.top],
  ];
}

function lineOf<Item extends { readonly distance: number }>(
  items: readonly Item[],
  depth: (item: Item) => number,
  place: Place,
): number[] {
  const numbers: number[] = [];
  for (let at = 1; at < items.length; at++) {
    const [a, b] = [itemAt(items, at - 1), itemAt(items, at)];
    const [p, q] = [place(a.distance), place(b.distance)];
    numbers.push(p.x, p.y, -depth(a), q.x, q.y, -depth(b));
  }
  return numbers;
}

/** Along the surface as received, down its ends, and along the far face. */
function borderOf(run: Run, place: Place): number[] {
  const ends = [itemAt(run, 0), itemAt(run, run.length - 1)];
  const bottom = ({ depth, thickness }: Run[number]) => depth + thickness;
  const sides = ends.flatMap((end) => {
    const { x, y } = place(end.distance);
    return [x, y, 0, x, y, -bottom(end)];
  });
  return [...lineOf(ends, () => 0, place), ...sides, ...lineOf(run, bottom, place)];
}
