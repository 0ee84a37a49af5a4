/**
 * The strip along a chain of lines and arcs without a grid, where it takes none: it lies between the chain's parallels on either
 * side, and ends square.
 *
 * The strip's edge gone round span by span, raw, differs from these parallels by what the corners cut off of them: a kite on the
 * inner side of each, wound once more than what is about it. Where the kite lies in the strips of both sides of its corner, as it does
 * unless these are short or the corner turns back, the same area is wound at least once, if the edge does not meet itself. That is
 * measured, exactly, with a margin within which the grid is asked after all. Cost: pairs of spans of the edge that are near each other.
 */
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { cross, dot } from '#geometry/point.ts';
import {
  type Loop,
  lineSpan,
  loopArea,
  reverseSpans,
  type Span,
  spanLength,
  tangentAlong,
} from '#geometry/span.ts';
import { inHalfTurns } from '#geometry/spans/half-turns.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { SAFELY_APART } from '#geometry/tolerances.ts';
import { parallelPath } from './parallel-chain.ts';

/** How far to the left of a chain the edges of its strip run, mm. */
interface Between {
  /** 0 or less. */
  readonly low: number;
  /** 0 or more. */
  readonly high: number;
}

/**
 * @param chain open, each span beginning where the one before it ends
 * @returns its edge, anticlockwise; undefined where it takes the grid to tell
 */
export function parallelStrip(chain: readonly Span[], between: Between): Loop | undefined {
  const { low, high } = between;
  if (!chain.every((span, at) => fitsCorner(chain[at - 1], span, between))) return undefined;
  const left = parallelPath(chain, high);
  const right = left && parallelPath(reverseSpans(chain), -low);
  if (left === undefined || right === undefined) return undefined;
  const edge = closedUp(reverseSpans(right), reverseSpans(left));
  if (edge === undefined || !isApartFromItself(edge) || loopArea(edge) <= 0) return undefined;
  return inHalfTurns(wholeSpans(edge).map(({ span }) => span));
}

/** Whether the square ends of both strips lie, on the inner side of the corner between them, in each other. */
function fitsCorner(before: Span | undefined, after: Span, { low, high }: Between): boolean {
  if (before === undefined) return true;
  const [arriving, leaving] = [tangentAlong(before, 1), tangentAlong(after, 0)];
  const turn = cross(arriving, leaving);
  const [inner, outer] = turn > 0 ? [high, -low] : [-low, high];
  const reach = inner * Math.abs(turn);
  if (reach > spanLength(before) || reach > spanLength(after)) return false;
  return dot(arriving, leaving) >= 0 || inner <= outer;
}

/** With a line over to the left edge at the chain's end, and back at its start. */
function closedUp(right: readonly Span[], left: readonly Span[]): Loop | undefined {
  const [start, end] = [right[0]?.start, right.at(-1)?.end];
  const [back, over] = [left.at(-1)?.end, left[0]?.start];
  if (start === undefined || end === undefined || back === undefined || over === undefined) return undefined;
  return [...right, lineSpan(end, over), ...left, lineSpan(back, start)];
}

/** Whether no two spans that do not follow each other come near each other. */
function isApartFromItself(edge: Loop): boolean {
  const boxes = edge.map(boxOfSpan);
  const index = indexBoxes(boxes);
  return edge.every((span, at) =>
    index.meeting(growBox(itemAt(boxes, at), SAFELY_APART)).every((other) => {
      if (other < at + 2 || (at === 0 && other === edge.length - 1)) return true;
      return spanGap(span, itemAt(edge, other)) > SAFELY_APART;
    }),
  );
}
