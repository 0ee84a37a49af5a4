/**
 * Where scribe lines meet: an open line ends on another one, or on itself. Its slot must stop short of the other's, or the
 * template would be cut there in two; and the other line has no bridge at that place.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, nearestShare, type Span, spanLength } from '#geometry/span.ts';
import { ENDS_ON_LINE, ROUNDING } from '#geometry/tolerances.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import type { RuledLine } from './template-set.ts';

export interface LineMeets {
  /** Places along the line at which others end, mm. */
  readonly at: readonly number[];
  /** What of the line a slot leaves at its start and its end, to stay clear of a line met there; 0 where none is. */
  readonly ends: readonly [number, number];
}

/** A slot stops at most so many clearances before its end; a line that comes in flatter is left to another template. */
const FARTHEST = 3;
/** Parts of the clearance in which the place to stop is looked for. */
const STEPS = 16;

/** @param clearance from one line to the end of another's slot, mm */
export function lineMeets(lines: readonly RuledLine[], clearance: number): LineMeets[] {
  const book = bookOf(lines);
  const at: number[][] = lines.map(() => []);
  const ends = lines.map(({ path, length }, line): [number, number] => {
    const [first, last] = [path.spans[0], path.spans.at(-1)];
    if (path.closed || first === undefined || last === undefined) return [0, 0];
    const short = (end: Point, isStart: boolean): number => {
      const met = linesAt(book, end, { line, length, isStart });
      for (const { line: other, along } of met) itemAt(at, other).push(along);
      const others = new Set(met.map((each) => each.line));
      return met.length === 0 ? 0 : stopShort(book, path.spans, { isStart, length, others, line, clearance });
    };
    return [short(first.start, true), short(last.end, false)];
  });
  return lines.map((_, line) => ({
    at: itemAt(at, line).sort((a, b) => a - b),
    ends: itemAt(ends, line),
  }));
}

interface BookSpan {
  readonly span: Span;
  readonly line: number;
  /** Length of the line before it. */
  readonly passed: number;
}

interface Book {
  readonly spans: readonly BookSpan[];
  readonly near: (box: Box) => BookSpan[];
}

function bookOf(lines: readonly RuledLine[]): Book {
  const spans = lines.flatMap(({ path }, line) => {
    let passed = 0;
    return path.spans.map((span): BookSpan => {
      const entry = { span, line, passed };
      passed += spanLength(span);
      return entry;
    });
  });
  const index = indexBoxes(spans.map(({ span }) => boxOfSpan(span)));
  return { spans, near: (box) => index.meeting(box).map((each) => itemAt(spans, each)) };
}

function around({ x, y }: Point, by: number): Box {
  return growBox({ minX: x, minY: y, maxX: x, maxY: y }, by);
}

/** Lines through an end of a line, and where along them; of the line itself only what is not that end. */
function linesAt(
  book: Book,
  end: Point,
  own: { readonly line: number; readonly length: number; readonly isStart: boolean },
): { readonly line: number; readonly along: number }[] {
  const met: { line: number; along: number }[] = [];
  for (const { span, line, passed } of book.near(around(end, ENDS_ON_LINE))) {
    if (distanceToSpan(span, end) > ENDS_ON_LINE) continue;
    const along = passed + nearestShare(span, end) * spanLength(span);
    const fromEnd = own.isStart ? along : own.length - along;
    if (line === own.line && fromEnd < 2 * ENDS_ON_LINE) continue;
    if (!met.some((each) => each.line === line && Math.abs(each.along - along) < ENDS_ON_LINE)) {
      met.push({ line, along });
    }
  }
  return met;
}

interface Ending {
  readonly isStart: boolean;
  readonly length: number;
  readonly line: number;
  readonly others: ReadonlySet<number>;
  readonly clearance: number;
}

/** The least way back from the end at which the line is clear of those that it meets there; 0 if it stays too near. */
function stopShort(book: Book, spans: readonly Span[], ending: Ending): number {
  const { isStart, length, others, line, clearance } = ending;
  for (let step = STEPS; step <= STEPS * FARTHEST; step++) {
    const back = (clearance * step) / STEPS;
    if (back >= length) return 0;
    const [rest] = stretchAlong(
      spans,
      isStart ? { from: back, to: length } : { from: 0, to: length - back },
    ).slice(isStart ? 0 : -1);
    if (rest === undefined) return 0;
    const tip = isStart ? rest.start : rest.end;
    const isClear = book
      .near(around(tip, clearance))
      .every(
        (each) =>
          !others.has(each.line) ||
          each.line === line ||
          distanceToSpan(each.span, tip) >= clearance - ROUNDING,
      );
    if (isClear) return back;
  }
  return 0;
}
