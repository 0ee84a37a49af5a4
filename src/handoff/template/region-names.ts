/** Names of regions on a template, each with the number of its peel: inside the region, clear of slots, ticks, holes and each other. */
import type { Box } from '#geometry/box.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { stretchPoint, stretchSpans } from '#geometry/spans/stretch-spans.ts';
import type { InkText } from './ink.ts';
import type { Ground, MarkedSet } from './mark-ground.ts';
import type { Slot } from './template-set.ts';
import { rectangleOf } from './template-sheet.ts';

/** Of capitals, mm, the largest that fits: 6 mm with what stands above and below, and smaller. */
const HEIGHTS = [4.2, 3, 2.2] as const;
/** mm clear of all else. */
const OFF = 1;
/** Places tried across a region, either way. */
const ACROSS = 7;

export function regionNames({ input }: MarkedSet, slots: readonly Slot[], ground: Ground): InkText[] {
  const shown = new Set(slots.map(({ stage }) => stage.number));
  const { stretch } = input.choices;
  return input.plan.stages.flatMap(({ number, regions }) =>
    shown.has(number)
      ? input.plan.regions
          .filter(({ id }) => regions.includes(id))
          .flatMap(({ id, label, loops }) =>
            placed([`${id} peel ${number}`, id], ground, {
              label: stretchPoint(label, stretch),
              box: boxOfSpans(stretchSpans(loops.flat(), stretch)),
            }),
          )
      : [],
  );
}

interface Room {
  readonly label: Point;
  readonly box: Box;
}

function placed(words: readonly string[], ground: Ground, { label, box }: Room): InkText[] {
  for (const text of words) {
    for (const height of HEIGHTS) {
      const width = text.length * height;
      for (const middle of places(label, box)) {
        const frame = {
          minX: middle.x - width / 2,
          maxX: middle.x + width / 2,
          minY: middle.y - height / 2,
          maxY: middle.y + height / 2,
        };
        if (!isWithin(frame, box) || !ground.isClear(rectangleOf(frame), OFF)) continue;
        ground.place(rectangleOf(frame));
        return [{ at: { x: frame.minX, y: frame.minY }, height, text }];
      }
    }
  }
  return [];
}

function isWithin(a: Box, b: Box): boolean {
  return a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;
}

/** The label's own place, then an even grid over the region's box. */
function* places(label: Point, { minX, maxX, minY, maxY }: Box): Generator<Point, void> {
  yield label;
  for (let row = 1; row < ACROSS; row++) {
    for (let column = 1; column < ACROSS; column++) {
      yield { x: minX + ((maxX - minX) * column) / ACROSS, y: minY + ((maxY - minY) * row) / ACROSS };
    }
  }
}
