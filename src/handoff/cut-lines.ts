/**
 * Scribe lines in the way that a machine goes along them: start, direction, overcut and order as chosen. A planned line has
 * its stage's own piece on the left, so that the maskant that stays lies on the right of the tool: the climb side for a tool
 * that turns clockwise. Segments too short for a machine are merged; else only where a line starts and which way it goes changes.
 */

import { distance, dot, type Point } from '#geometry/point.ts';
import { type Path, pointAlong, reverseSpans, type Span, spanLength, tangentAlong } from '#geometry/span.ts';
import { ROUNDING, SAME_SUM } from '#geometry/tolerances.ts';
import type { CuttingChoices } from '#job/fields/cutting-fields.ts';
import { cos } from '#maths/sine.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { followableLine } from './followable-line.ts';
import { stretchAlong } from './stretch-along.ts';

/** A line to go along from its first span to its last. */
export interface CutLine {
  readonly stage: Stage;
  /** Open where it goes on past its start. */
  readonly path: Path;
}

/** Cosine of the turn that counts as a corner: 10°. Smoother joints are a curve to a tool. */
const CORNER_COSINE = cos((10 * Math.PI) / 180);

/** Every line of the stages, a stage after the other. */
export function cutLines(
  stages: readonly Stage[],
  choices: Omit<CuttingChoices, 'split'>,
): readonly CutLine[] {
  const planned = stages.map((stage) =>
    stage.lines.flatMap((line): CutLine[] => {
      const path = followableLine(line);
      return path === undefined ? [] : [{ stage, path: directed(path, choices) }];
    }),
  );
  return choices.order === 'as-planned' ? planned.flat() : shortTravel(planned);
}

function directed(line: Path, { start, direction, overcut }: Omit<CuttingChoices, 'split'>): Path {
  const spans = direction === 'climb' ? line.spans : reverseSpans(line.spans);
  if (!line.closed) return { closed: false, spans };
  const started = startedAt(spans, start);
  if (overcut === 0) return { closed: true, spans: started };
  return { closed: false, spans: [...started, ...stretchAlong(started, { from: 0, to: overcut })] };
}

function startedAt(spans: readonly Span[], start: CuttingChoices['start']): readonly Span[] {
  if (start === 'corner') {
    const corner = spans.findIndex((span, index) => isCorner(spans.at(index - 1), span));
    return corner === -1 ? spans : [...spans.slice(corner), ...spans.slice(0, corner)];
  }
  if (start === 'mid-side') {
    const longest = longestSpan(spans);
    const span = spans[longest];
    if (span === undefined) return spans;
    const [first, second] = halves(span);
    return [second, ...spans.slice(longest + 1), ...spans.slice(0, longest), first];
  }
  return spans;
}

/** Whether the line turns there too sharply to be taken for a curve. */
export function isCorner(before: Span | undefined, after: Span): boolean {
  return before !== undefined && dot(tangentAlong(before, 1), tangentAlong(after, 0)) < CORNER_COSINE;
}

/** The longest line; of a curve without lines the longest arc; the first of equals, to a nanometre. */
function longestSpan(spans: readonly Span[]): number {
  const hasLine = spans.some(({ kind }) => kind === 'line');
  let best = -1;
  let most = 0;
  spans.forEach((span, index) => {
    if ((hasLine && span.kind !== 'line') || spanLength(span) < most + ROUNDING) return;
    most = spanLength(span);
    best = index;
  });
  return best;
}

function halves(span: Span): readonly [Span, Span] {
  const middle = pointAlong(span, 0.5);
  if (span.kind === 'line') {
    return [
      { ...span, end: middle },
      { ...span, start: middle },
    ];
  }
  const sweep = span.sweep / 2;
  return [
    { ...span, end: middle, sweep },
    { ...span, start: middle, sweep },
  ];
}

/** Lines in an order, and mm in the air from the drawing's origin through all of them. */
interface Way {
  readonly lines: readonly CutLine[];
  readonly length: number;
}

/**
 * Each stage in the planned order, or always to the nearest start that is left, whichever lets all stages together travel least: a
 * stage that ends far from the next one's start costs what it gains. Of all ways so far the best of either kind are gone on
 * with; all stages as planned is among them, so that it is never longer. Quadratic in the lines of a stage.
 */
function shortTravel(stages: readonly (readonly CutLine[])[]): readonly CutLine[] {
  const origin: Point = { x: 0, y: 0 };
  let ways: readonly Way[] = [{ lines: [], length: 0 }];
  for (const planned of stages) {
    const orders = [() => planned, (from: Point) => nearestFirst(planned, from)];
    ways = orders.map((order) =>
      shortest(
        ways.map(({ lines, length }): Way => {
          const from = endOf(lines) ?? origin;
          const next = order(from);
          return { lines: [...lines, ...next], length: length + travel(next, from) };
        }),
      ),
    );
  }
  return shortest(ways).lines;
}

/** The first of equals, to rounding: the planned order where it is no longer. */
function shortest(ways: readonly Way[]): Way {
  return ways.reduce((best, way) => (way.length < best.length - SAME_SUM ? way : best));
}

function nearestFirst(lines: readonly CutLine[], from: Point): readonly CutLine[] {
  const left = [...lines];
  const ordered: CutLine[] = [];
  let at = from;
  while (left.length > 0) {
    let nearest = 0;
    let least = Number.POSITIVE_INFINITY;
    left.forEach((line, index) => {
      const gap = distance(at, startOf(line) ?? at);
      if (gap < least - SAME_SUM) {
        least = gap;
        nearest = index;
      }
    });
    const [next] = left.splice(nearest, 1);
    if (next === undefined) break;
    ordered.push(next);
    at = next.path.spans.at(-1)?.end ?? at;
  }
  return ordered;
}

function endOf(lines: readonly CutLine[]): Point | undefined {
  return lines.at(-1)?.path.spans.at(-1)?.end;
}

/** mm from a place to the first line, and between the end of each line and the start of the next. */
export function travel(lines: readonly CutLine[], from: Point): number {
  let at = from;
  let length = 0;
  for (const line of lines) {
    length += distance(at, startOf(line) ?? at);
    at = line.path.spans.at(-1)?.end ?? at;
  }
  return length;
}

function startOf({ path }: CutLine): Point | undefined {
  return path.spans[0]?.start;
}
