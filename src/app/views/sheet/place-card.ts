/**
 * Where the card of the place under the pointer stands: beside it, over land and ground rather than over floors, whole in the view.
 * Pixels; pure.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';

interface CardAsk {
  readonly pointer: Point;
  readonly width: number;
  readonly height: number;
  readonly view: { readonly width: number; readonly height: number };
  /** Of what is pointed at, which is never covered where that can be. */
  readonly around: Box | undefined;
  /** Of the other floors. */
  readonly floors: readonly Box[];
}

/** Between the card and the pointer, or what is pointed at. */
const GAP = 16;
/** Covering what is pointed at counts so many times as much as covering another floor. */
const OWN = 8;

/** Upper left corner. */
export function placeCard(ask: CardAsk): Point {
  const { pointer, width, height, view, around, floors } = ask;
  const box = around ?? { minX: pointer.x, maxX: pointer.x, minY: pointer.y, maxY: pointer.y };
  const columns = [pointer.x + GAP, pointer.x - GAP - width, box.maxX + GAP, box.minX - GAP - width];
  const rows = [pointer.y + GAP, pointer.y - GAP - height, box.maxY + GAP, box.minY - GAP - height];
  let best = { x: 0, y: 0, cost: Number.POSITIVE_INFINITY };
  for (const wantedX of columns) {
    for (const wantedY of rows) {
      const x = held(wantedX, view.width - width);
      const y = held(wantedY, view.height - height);
      const card = { minX: x, minY: y, maxX: x + width, maxY: y + height };
      const covered = floors.reduce((sum, floor) => sum + common(card, floor), 0);
      const isUnderPointer = common(card, grownPoint(pointer)) > 0;
      const away = Math.hypot(x + width / 2 - pointer.x, y + height / 2 - pointer.y);
      const cost = covered + OWN * common(card, box) + 20 * away + (isUnderPointer ? 1e9 : 0);
      if (cost < best.cost) best = { x, y, cost };
    }
  }
  return { x: best.x, y: best.y };
}

function grownPoint({ x, y }: Point): Box {
  return { minX: x - 4, minY: y - 4, maxX: x + 12, maxY: y + 16 };
}

function held(wanted: number, most: number): number {
  return Math.min(Math.max(0, most), Math.max(0, wanted));
}

function common(a: Box, b: Box): number {
  const width = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const height = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return width > 0 && height > 0 ? width * height : 0;
}
