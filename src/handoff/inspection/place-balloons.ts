/**
 * Where numbered balloons stand: each as near to its mark as leaves it clear of other balloons, of marks and of leaders, with no two leaders
 * crossed. Where marks are crowded they go farther out; where nothing is clear a leader crosses another, and as a last resort passes under a
 * balloon. Balloons themselves stand apart as long as the room has a place. Cost: marks² × places tried.
 */
import { cross, distance, type Point, subtract } from '#geometry/point.ts';
import { distanceToSpan, lineSpan } from '#geometry/span.ts';
import type { PageBox } from '#handoff/pdf/pen.ts';
import { cos, sin } from '#maths/sine.ts';

/** mm on paper. */
export interface BalloonRoom {
  readonly radius: number;
  readonly room: PageBox;
}

/** Distances from the mark, in radii; steps between rings, and the last. */
const FIRST = 2.2;
const STEP = 0.9;
const LAST = 30;
const WAYS = 24;
/** mm between balloons, and from a mark or leader to a balloon. */
const APART = 0.3;
const CLEAR = 0.5;

interface Placed {
  readonly mark: Point;
  readonly center: Point;
}

interface Ground {
  readonly set: readonly Placed[];
  readonly marks: readonly Point[];
  readonly room: BalloonRoom;
}

export function placeBalloons(marks: readonly Point[], room: BalloonRoom): Point[] {
  const set: Placed[] = [];
  for (const mark of marks) set.push({ mark, center: placeOf(mark, { set, marks, room }) });
  return set.map(({ center }) => center);
}

/** The nearest place that is clear of all; else the nearest whose leader is clear, or that is apart. */
function placeOf(mark: Point, ground: Ground): Point {
  const { set, room } = ground;
  let [apart, clear]: (Point | undefined)[] = [];
  for (const center of placesAround(mark, room)) {
    if (!isApart(center, ground)) continue;
    apart ??= center;
    if (!isLeaderClear({ mark, center }, set, room.radius)) continue;
    clear ??= center;
    if (set.every((other) => !doCross(mark, center, other))) return center;
  }
  return clear ?? apart ?? mark;
}

/** Nearest first. */
function* placesAround({ x, y }: Point, { radius, room }: BalloonRoom): Generator<Point, void> {
  for (let reach = FIRST * radius; reach <= LAST * radius; reach += STEP * radius) {
    for (let way = 0; way < WAYS; way++) {
      // From the lower right on, where a hand holds the page.
      const angle = -Math.PI / 4 + (2 * Math.PI * way) / WAYS;
      const place = { x: x + reach * cos(angle), y: y + reach * sin(angle) };
      if (
        place.x - radius >= room.minX &&
        place.x + radius <= room.maxX &&
        place.y - radius >= room.minY &&
        place.y + radius <= room.maxY
      )
        yield place;
    }
  }
}

function isApart(place: Point, { set, marks, room: { radius } }: Ground): boolean {
  return (
    set.every(({ center }) => distance(center, place) > 2 * radius + APART) &&
    marks.every((mark) => distance(mark, place) > radius + CLEAR)
  );
}

/** Its leader under no balloon, and no earlier leader under its balloon. */
function isLeaderClear({ mark, center }: Placed, set: readonly Placed[], radius: number): boolean {
  const own = lineSpan(mark, center);
  return set.every(
    (other) =>
      distanceToSpan(own, other.center) > radius + CLEAR &&
      distanceToSpan(lineSpan(other.mark, other.center), center) > radius + CLEAR,
  );
}

function doCross(from: Point, to: Point, { mark, center }: Placed): boolean {
  return (
    side(from, to, mark) * side(from, to, center) < 0 && side(mark, center, from) * side(mark, center, to) < 0
  );
}

/** Sign: on which side of a line a point lies. */
function side(from: Point, to: Point, point: Point): number {
  return cross(subtract(to, from), subtract(point, from));
}
