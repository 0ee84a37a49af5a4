/**
 * Names of regions on a template, each with the number of its peel: inside the region, clear of slots, ticks, holes and each other, and
 * whole on one page where the template is laid on several.
 */
import type { Box } from '#geometry/box.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { stretchPoint, stretchSpans } from '#geometry/spans/stretch-spans.ts';
import { boxOfText, type InkText } from './ink.ts';
import type { Ground } from './mark-ground.ts';
import type { Slot, TemplateInput } from './template-set.ts';
import { rectangleOf } from './template-sheet.ts';
import { isInOneTile, type TileGrid } from './tile-pages.ts';

/** Of capitals, mm, the largest that fits: 6 mm with what stands above and below, and smaller. */
const HEIGHTS = [4.2, 3, 2.2] as const;
/** mm clear of all else. */
const OFF = 1;
/** Places tried across a region, either way. */
const ACROSS = 7;

export interface NamedGround {
  readonly ground: Ground;
  /** Names are whole on one of its tiles. */
  readonly grid: TileGrid;
}

export function regionNames(input: TemplateInput, slots: readonly Slot[], on: NamedGround): InkText[] {
  const shown = new Set(slots.map(({ stage }) => stage.number));
  const { stretch } = input.choices;
  return input.plan.stages.flatMap(({ number, regions }) => {
    const own = new Set(shown.has(number) ? regions : []);
    return input.plan.regions
      .filter(({ id }) => own.has(id))
      .flatMap(({ id, label, loops }) =>
        placed([`${id} peel ${number}`, id], on, {
          label: stretchPoint(label, stretch),
          box: boxOfSpans(stretchSpans(loops.flat(), stretch)),
        }),
      );
  });
}

interface Room {
  readonly label: Point;
  readonly box: Box;
}

function placed(words: readonly string[], { ground, grid }: NamedGround, { label, box }: Room): InkText[] {
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
        const name = { at: { x: frame.minX, y: frame.minY }, height, text };
        if (!isWithin(frame, box) || !isInOneTile(boxOfText(name), grid)) continue;
        if (!ground.isClear(rectangleOf(frame), OFF)) continue;
        ground.place(rectangleOf(frame));
        return [name];
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
