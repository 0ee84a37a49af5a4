/** What marks and words of a template keep clear of: slots, holes and their names, the edge, and what is placed already. */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { growingBoxes } from '#geometry/growing-boxes.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Loop, Span } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { nameOfHole } from './template-label.ts';
import type { Slot, TemplateSet } from './template-set.ts';
import { circleOf, rectangleOf } from './template-sheet.ts';

export type MarkedSet = Pick<TemplateSet, 'sheet' | 'band' | 'input'>;

/** mm between two marks, so that they are not read as one: more than between two ticks of the smallest. */
const BETWEEN = 1;

/** mm: marks and names are a few millimetres large. */
const CELL = 10;

/** What marks keep clear of, and the marks that are placed already. */
export interface Ground {
  /** Whether something drawn keeps so far from all edges, and lies on the sheet and in no slot. */
  readonly isClear: (drawn: readonly Span[], off: number) => boolean;
  readonly place: (drawn: readonly Span[]) => void;
}

export function groundOf({ sheet }: MarkedSet, slots: readonly Slot[]): Ground {
  const names = sheet.holes.map((hole): Loop[] => [rectangleOf(nameOfHole(hole).box)]);
  const shut = [
    ...slots.map(({ outline }) => outline),
    ...sheet.holes.map((hole): Loop[] => [circleOf(hole)]),
    ...names,
  ];
  const areas = indexBoxes(shut.map((loops) => boxOfSpans(loops.flat())));
  const edges = [...shut.flat(2), ...sheet.outline];
  const index = indexBoxes(edges.map(boxOfSpan));
  const placed = growingBoxes<readonly Span[]>(CELL);
  const isApart = (span: Span, off: number): boolean => {
    const about = growBox(boxOfSpan(span), off);
    return index.meeting(about).every((edge) => spanGap(itemAt(edges, edge), span) >= off - SAME_SUM);
  };
  const isOutside = ({ start }: Span): boolean =>
    isInsideLoops([sheet.outline], start) &&
    areas
      .meeting({ minX: start.x, minY: start.y, maxX: start.x, maxY: start.y })
      .every((area) => !isInsideLoops(itemAt(shut, area), start));
  const isApartFromMarks = (drawn: readonly Span[]): boolean =>
    placed.everyMeeting(growBox(boxOfSpans(drawn), BETWEEN), (spans) =>
      spans.every((one) => drawn.every((other) => spanGap(one, other) >= BETWEEN)),
    );
  return {
    isClear: (drawn, off) =>
      drawn.every((span) => isApart(span, off)) && drawn.every(isOutside) && isApartFromMarks(drawn),
    place: (drawn) => placed.add(boxOfSpans(drawn), drawn),
  };
}
