/**
 * Where numbered balloons stand: each as near to its mark as leaves it clear of other balloons, of marks and of leaders, with no two leaders
 * crossed. Where marks are crowded they go farther out; where nothing is clear a leader crosses another, and as a last resort passes under a
 * balloon. Balloons themselves stand apart as long as the room has a place. Cost: marks × places tried × what is near a place; and for
 * places that are apart, × leaders near the mark.
 */
import { type Box, boxesMeet, boxOfPoints, growBox } from '#geometry/box.ts';
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
  readonly room: BalloonRoom;
  readonly marks: NearPoints;
  readonly centers: NearPoints;
  /** Of those placed already all whose leaders come near enough to matter. */
  readonly near: readonly Placed[];
}

export function placeBalloons(marks: readonly Point[], room: BalloonRoom): Point[] {
  const { radius } = room;
  const markGrid = nearPoints(radius + CLEAR, room.room);
  const centers = nearPoints(2 * radius + APART, room.room);
  for (const mark of marks) markGrid.add(mark);
  const set: (Placed & { readonly box: Box })[] = [];
  for (const mark of marks) {
    const felt = growBox(boxOfPoints([mark]), (LAST + 1) * radius + CLEAR);
    const near = set.filter(({ box }) => boxesMeet(box, felt));
    const center = placeOf(mark, { room, marks: markGrid, centers, near });
    set.push({ mark, center, box: boxOfPoints([mark, center]) });
    centers.add(center);
  }
  return set.map(({ center }) => center);
}

/** Points that are asked for by what lies within one distance. */
interface NearPoints {
  readonly add: (point: Point) => void;
  readonly isAnyAt: (place: Point) => boolean;
}

/**
 * @param within of a place, the distance itself counted in
 * @param area where most of them lie: those beyond it count to the cells at its edge
 */
function nearPoints(within: number, { minX, minY, maxX, maxY }: Box): NearPoints {
  const countIn = (extent: number): number => Math.max(1, Math.ceil(extent / within));
  const [columns, rows] = [countIn(maxX - minX), countIn(maxY - minY)];
  const cells: (Point[] | undefined)[] = Array.from({ length: columns * rows });
  const columnOf = (x: number): number => Math.max(0, Math.min(columns - 1, Math.floor((x - minX) / within)));
  const rowOf = (y: number): number => Math.max(0, Math.min(rows - 1, Math.floor((y - minY) / within)));
  return {
    add: (point) => {
      const at = columnOf(point.x) * rows + rowOf(point.y);
      const cell = cells[at];
      if (cell === undefined) cells[at] = [point];
      else cell.push(point);
    },
    isAnyAt: (place) => {
      const [column, row] = [columnOf(place.x), rowOf(place.y)];
      for (let i = Math.max(0, column - 1); i <= column + 1 && i < columns; i++) {
        for (let j = Math.max(0, row - 1); j <= row + 1 && j < rows; j++) {
          const cell = cells[i * rows + j];
          if (cell?.some((each) => distance(each, place) <= within) === true) return true;
        }
      }
      return false;
    },
  };
}

/** The nearest place that is clear of all; else the nearest whose leader is clear, or that is apart. */
function placeOf(mark: Point, ground: Ground): Point {
  const { near, room, marks, centers } = ground;
  let [apart, clear]: (Point | undefined)[] = [];
  for (const center of placesAround(mark, room)) {
    if (centers.isAnyAt(center) || marks.isAnyAt(center)) continue;
    apart ??= center;
    if (!isLeaderClear({ mark, center }, near, room.radius)) continue;
    clear ??= center;
    if (near.every((other) => !doCross(mark, center, other))) return center;
  }
  return clear ?? apart ?? mark;
}

/** From the lower right on, where a hand holds the page. */
const DIRECTIONS: readonly Point[] = Array.from({ length: WAYS }, (_, way) => {
  const angle = -Math.PI / 4 + (2 * Math.PI * way) / WAYS;
  return { x: cos(angle), y: sin(angle) };
});

/** Nearest first. */
function* placesAround({ x, y }: Point, { radius, room }: BalloonRoom): Generator<Point, void> {
  for (let reach = FIRST * radius; reach <= LAST * radius; reach += STEP * radius) {
    for (const direction of DIRECTIONS) {
      const place = { x: x + reach * direction.x, y: y + reach * direction.y };
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

/** Its leader under no balloon, and no earlier leader under its balloon. */
function isLeaderClear({ mark, center }: Placed, near: readonly Placed[], radius: number): boolean {
  const own = lineSpan(mark, center);
  return near.every(
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
