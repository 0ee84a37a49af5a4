/**
 * Where what belongs to one point stands beside it: a finding's shape, or the tag of a line too short for its mark. So far off its
 * point that the point stays seen, in the first of eight directions that is free. Pixels; pure.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { around, overlap } from './place-labels.ts';

export interface FlagRequest {
  readonly id: string;
  readonly point: Point;
}

export interface PlacedFlag {
  readonly id: string;
  readonly point: Point;
  /** Its middle. */
  readonly at: Point;
  readonly box: Box;
}

export interface FlagRoom {
  readonly width: number;
  readonly height: number;
  readonly taken: readonly Box[];
  /** Half the width and height of a flag, and how far its middle stands off its point. */
  readonly half: number;
  readonly away: number;
}

/** Up first, then down, then aside. */
const DIRECTIONS: readonly Point[] = [
  { x: 0.7, y: -0.7 },
  { x: -0.7, y: -0.7 },
  { x: 0.7, y: 0.7 },
  { x: -0.7, y: 0.7 },
  { x: 0, y: -1 },
  { x: 0, y: 1 },
  { x: 1, y: 0 },
  { x: -1, y: 0 },
];

/** In the order of the requests; one that finds no free place is left out. */
export function placeFlags(requests: readonly FlagRequest[], room: FlagRoom): PlacedFlag[] {
  const taken = [...room.taken];
  const placed: PlacedFlag[] = [];
  for (const { id, point } of requests) {
    const at = DIRECTIONS.map(({ x, y }) => ({
      x: point.x + x * room.away,
      y: point.y + y * room.away,
    })).find((place) => isFree(around(place, room.half, room.half), room, taken));
    if (at === undefined) continue;
    const box = around(at, room.half, room.half);
    placed.push({ id, point, at, box });
    taken.push(box);
  }
  return placed;
}

function isFree(box: Box, { width, height }: FlagRoom, taken: readonly Box[]): boolean {
  return (
    box.minX >= 0 &&
    box.minY >= 0 &&
    box.maxX <= width &&
    box.maxY <= height &&
    !taken.some((other) => overlap(box, other))
  );
}
