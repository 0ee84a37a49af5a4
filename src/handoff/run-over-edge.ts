/**
 * Lines that end at the sheet's edge run on past it, so that knife and cutter leave the maskant cut through there: straight on, along
 * the tangent of their end. A line that ends on another line stays as it is.
 */

import { boxOfPoints, boxOfSpan, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, lineSpan, type Path, type Span, tangentAlong } from '#geometry/span.ts';
import { ON_SHEET_EDGE } from '#geometry/tolerances.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';

export function stagesPastEdge(
  { stages, sheet }: Pick<EtchPlan, 'stages' | 'sheet'>,
  by: number,
): readonly Stage[] {
  if (by === 0) return stages;
  const edge = edgeOf(sheet);
  return stages.map((stage) => ({ ...stage, lines: stage.lines.map((line) => pastEdge(line, edge, by)) }));
}

interface Edge {
  readonly spans: readonly Span[];
  readonly index: BoxIndex;
}

function edgeOf(sheet: readonly Loop[]): Edge {
  const spans = sheet.flat();
  return { spans, index: indexBoxes(spans.map(boxOfSpan)) };
}

function pastEdge(line: Path, edge: Edge, by: number): Path {
  const [first, last] = [line.spans[0], line.spans.at(-1)];
  if (line.closed || first === undefined || last === undefined) return line;
  const before = isOnEdge(first.start, edge) ? [runIn(first, by)] : [];
  const after = isOnEdge(last.end, edge) ? [runOut(last, by)] : [];
  if (before.length + after.length === 0) return line;
  return { closed: false, spans: [...before, ...line.spans, ...after] };
}

function isOnEdge(at: Point, { spans, index }: Edge): boolean {
  return index.meeting(growBox(boxOfPoints([at]), ON_SHEET_EDGE)).some((near) => {
    const span = spans[near];
    return span !== undefined && distanceToSpan(span, at) <= ON_SHEET_EDGE;
  });
}

function runIn(first: Span, by: number): Span {
  const { x, y } = first.start;
  const along = tangentAlong(first, 0);
  return lineSpan({ x: x - along.x * by, y: y - along.y * by }, first.start);
}

function runOut(last: Span, by: number): Span {
  const { x, y } = last.end;
  const along = tangentAlong(last, 1);
  return lineSpan(last.end, { x: x + along.x * by, y: y + along.y * by });
}
