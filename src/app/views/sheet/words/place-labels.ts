/**
 * Where names and figures stand on the sheet, as on a map: inside what they name, upright, clear of edges and of each other, as
 * near to the middle as they can. Two lines, else one, else the name alone, else nothing; of two that compete the larger region
 * wins. Pixels; pure.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';

export type LabelForm = 'two' | 'one' | 'name';

export interface LabelRequest {
  readonly id: string;
  /** Outer ring first, then holes. */
  readonly rings: readonly (readonly Point[])[];
  readonly middle: Point;
  readonly nameWidth: number;
  /** 0 where there is none. */
  readonly figureWidth: number;
  /** Left out, `LINE_HEIGHT`. */
  readonly lineHeight?: number;
}

export interface PlacedLabel {
  readonly id: string;
  readonly form: LabelForm;
  /** Its middle. */
  readonly at: Point;
  readonly box: Box;
}

export interface LabelRoom {
  readonly width: number;
  readonly height: number;
  /** Taken already. */
  readonly taken: readonly Box[];
  /** Lines to keep clear of. */
  readonly lines: readonly { readonly from: Point; readonly to: Point }[];
  /** Whether what is named is seen all over the box; where nothing hides anything it is left out. */
  readonly isSeenIn?: (id: string, box: Box) => boolean;
}

export const LINE_HEIGHT = 16;
/** Between name and figure on one line. */
export const WORD_GAP = 6;
/** Clear of edges, of lines that are laid over the sheet, and of other labels. */
const CLEAR = { edge: 4, line: 9, label: 2 };
/** Places tried each way across a region. */
const TRIES = 7;

export function placeLabels(requests: readonly LabelRequest[], room: LabelRoom): PlacedLabel[] {
  const largestFirst = requests
    .map((request) => ({ request, box: boxOf(request.rings[0] ?? []) }))
    .filter(({ box }) => isSeen(box, room))
    .sort((a, b) => areaOf(b.box) - areaOf(a.box));
  const placed: PlacedLabel[] = [];
  const taken = [...room.taken];
  for (const { request, box } of largestFirst) {
    const label = placeOne(request, box, { ...room, taken });
    if (label === undefined) continue;
    placed.push(label);
    taken.push(label.box);
  }
  return placed;
}

function placeOne(request: LabelRequest, box: Box, room: LabelRoom): PlacedLabel | undefined {
  for (const { form, width, height } of formsOf(request)) {
    if (box.maxX - box.minX < width || box.maxY - box.minY < height) continue;
    for (const at of triesIn(box, request.middle)) {
      const label = around(at, width / 2, height / 2);
      if (isFree(label, request.rings, room) && (room.isSeenIn?.(request.id, label) ?? true))
        return { id: request.id, form, at, box: label };
    }
  }
  return undefined;
}

function formsOf({ nameWidth, figureWidth, lineHeight = LINE_HEIGHT }: LabelRequest) {
  const name = { form: 'name', width: nameWidth, height: lineHeight } as const;
  if (figureWidth === 0) return [name];
  return [
    { form: 'two', width: Math.max(nameWidth, figureWidth), height: 2 * lineHeight } as const,
    { form: 'one', width: nameWidth + WORD_GAP + figureWidth, height: lineHeight } as const,
    name,
  ];
}

/** The middle, then places all over the region, nearest first. */
function triesIn({ minX, minY, maxX, maxY }: Box, middle: Point): Point[] {
  const places: Point[] = [];
  for (let row = 1; row < TRIES; row++) {
    for (let column = 1; column < TRIES; column++) {
      places.push({
        x: minX + ((maxX - minX) * column) / TRIES,
        y: minY + ((maxY - minY) * row) / TRIES,
      });
    }
  }
  const away = ({ x, y }: Point) => Math.hypot(x - middle.x, y - middle.y);
  return [middle, ...places.sort((a, b) => away(a) - away(b))];
}

function isFree(
  label: Box,
  rings: LabelRequest['rings'],
  { width, height, taken, lines }: LabelRoom,
): boolean {
  const { minX, minY, maxX, maxY } = grown(label, CLEAR.edge);
  if (minX < 0 || minY < 0 || maxX > width || maxY > height) return false;
  const clear = grown(label, CLEAR.label);
  if (taken.some((other) => overlap(clear, other))) return false;
  const far = grown(label, CLEAR.line);
  if (lines.some(({ from, to }) => meets(far, from, to))) return false;
  return isInside(grown(label, CLEAR.edge), rings);
}

/** The middle lies inside, and no edge passes through. */
function isInside(box: Box, rings: LabelRequest['rings']): boolean {
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  let crossings = 0;
  for (const ring of rings) {
    let from = ring.at(-1);
    for (const to of ring) {
      if (from !== undefined) {
        if (meets(box, from, to)) return false;
        const isAcross = from.y > middle.y !== to.y > middle.y;
        if (isAcross && middle.x < from.x + ((to.x - from.x) * (middle.y - from.y)) / (to.y - from.y))
          crossings += 1;
      }
      from = to;
    }
  }
  return crossings % 2 === 1;
}

/** Whether a straight line has a part in the box (Liang and Barsky, 1984). */
export function meets({ minX, minY, maxX, maxY }: Box, from: Point, to: Point): boolean {
  if (Math.max(from.x, to.x) < minX || Math.min(from.x, to.x) > maxX) return false;
  if (Math.max(from.y, to.y) < minY || Math.min(from.y, to.y) > maxY) return false;
  let [enter, leave] = [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  for (const [by, room] of [
    [-dx, from.x - minX],
    [dx, maxX - from.x],
    [-dy, from.y - minY],
    [dy, maxY - from.y],
  ] as const) {
    if (by === 0 && room < 0) return false;
    if (by < 0) enter = Math.max(enter, room / by);
    if (by > 0) leave = Math.min(leave, room / by);
  }
  return enter <= leave;
}

export function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

export function around({ x, y }: Point, halfWidth: number, halfHeight: number): Box {
  return { minX: x - halfWidth, minY: y - halfHeight, maxX: x + halfWidth, maxY: y + halfHeight };
}

export function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function boxOf(ring: readonly Point[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of ring) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

function isSeen({ minX, minY, maxX, maxY }: Box, { width, height }: LabelRoom): boolean {
  return maxX > 0 && maxY > 0 && minX < width && minY < height;
}

function areaOf({ minX, minY, maxX, maxY }: Box): number {
  return (maxX - minX) * (maxY - minY);
}
