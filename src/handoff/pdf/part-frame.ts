/** How the part lies on paper: one scale for the whole sheet, as large as its room allows, in the middle of it. */
import { type Box, boxOfSpans, EMPTY_BOX, joinBoxes } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Span } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { Area } from './sheet-book.ts';

/** mm on paper. */
export interface PictureRoom {
  readonly width: number;
  /** At most; left out, a fixed share of the width. */
  readonly height?: number | undefined;
}

export interface PartFrame {
  /** Millimetres of paper to one of part. */
  readonly scale: number;
  /** mm of paper that the part takes. */
  readonly height: number;
  readonly on: (area: Area) => Placed;
}

/** From the part to the page. */
export interface Placed {
  readonly place: (point: Point) => Point;
  readonly loop: (loop: Loop) => Loop;
}

/** Of the width: what leaves room for the tables below on paper of ISO 216. */
const MOST_SHARE = 0.62;

export function partFrame(
  plan: EtchPlan,
  { width, height: most = width * MOST_SHARE }: PictureRoom,
): PartFrame {
  const box = boxOfPart(plan);
  const [across, up] = [Math.max(1, box.maxX - box.minX), Math.max(1, box.maxY - box.minY)];
  const scale = Math.min(width / across, most / up);
  return {
    scale,
    height: up * scale,
    on: ({ left, top }) => placed(box, { scale, left: left + (width - across * scale) / 2, top }),
  };
}

function boxOfPart({ sheet, regions }: EtchPlan): Box {
  let box = EMPTY_BOX;
  for (const loop of sheet) box = joinBoxes(box, boxOfSpans(loop));
  for (const { loops } of regions) for (const loop of loops) box = joinBoxes(box, boxOfSpans(loop));
  return box;
}

function placed(
  box: Box,
  { scale, left, top }: { readonly scale: number; readonly left: number; readonly top: number },
): Placed {
  const place = ({ x, y }: Point): Point => ({
    x: left + (x - box.minX) * scale,
    y: top - (box.maxY - y) * scale,
  });
  const moved = (span: Span): Span => {
    const ends = { start: place(span.start), end: place(span.end) };
    if (span.kind === 'line') return { kind: 'line', ...ends };
    return { ...span, ...ends, center: place(span.center), radius: span.radius * scale };
  };
  return { place, loop: (loop) => loop.map(moved) };
}
