/**
 * How far a drawn edge may be off, written on the edge's own band: centred on it, where it is clear of every other edge, of marks and of words;
 * nowhere where no such place is left, and there more on zooming in. Pixels; pure.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { around, grown, meets, overlap } from './place-labels.ts';

export interface Segment {
  readonly from: Point;
  readonly to: Point;
}

export interface EdgeRequest {
  readonly id: string;
  /** Where its words are wanted. */
  readonly wanted: Point;
  readonly lines: readonly (readonly Segment[])[];
  readonly width: number;
}

export interface EdgeRoom {
  readonly width: number;
  readonly height: number;
  readonly taken: readonly Box[];
  /** Laid over the sheet. */
  readonly lines: readonly Segment[];
}

export interface PlacedEdge {
  readonly id: string;
  readonly at: Point;
  readonly box: Box;
}

const HALF_HEIGHT = 8;
/** Clear of other edges and of words. */
const CLEAR = 2;
/** From one place that is tried along an edge to the next. */
const STEP = 24;
/** Places tried on one edge: one with more than this is tried at its nearest. */
const MOST_TRIES = 60;

/** In the order of the requests. */
export function placeEdges(requests: readonly EdgeRequest[], room: EdgeRoom): PlacedEdge[] {
  const taken = [...room.taken];
  const placed: PlacedEdge[] = [];
  for (const request of requests) {
    const others = requests.filter((each) => each !== request).flatMap(({ lines }) => lines.flat());
    const isFree = (box: Box) =>
      box.minX >= 0 &&
      box.minY >= 0 &&
      box.maxX <= room.width &&
      box.maxY <= room.height &&
      !taken.some((other) => overlap(box, other)) &&
      ![...room.lines, ...others].some(({ from, to }) => meets(box, from, to));
    const boxAt = (at: Point) => around(at, request.width / 2, HALF_HEIGHT);
    const at = triesOn(request).find((place) => isFree(grown(boxAt(place), CLEAR)));
    if (at === undefined) continue;
    placed.push({ id: request.id, at, box: boxAt(at) });
    taken.push(boxAt(at));
  }
  return placed;
}

/** Where they are wanted, then places all along the edge, nearest first. */
function triesOn({ wanted, lines }: EdgeRequest): Point[] {
  const along = lines.flat().flatMap(({ from, to }) => {
    const count = Math.max(
      1,
      Math.min(MOST_TRIES, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / STEP)),
    );
    return Array.from({ length: count }, (_, index) => {
      const share = (index + 0.5) / count;
      return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
    });
  });
  const away = ({ x, y }: Point) => Math.hypot(x - wanted.x, y - wanted.y);
  return [wanted, ...along.sort((a, b) => away(a) - away(b)).slice(0, MOST_TRIES)];
}
