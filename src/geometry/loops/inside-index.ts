/**
 * Which points lie inside a set of closed loops: exact, mostly at once.
 * Spans are cut where they turn back along the scan axis, so that a ray meets each span at most once, and sorted into
 * slices across the longer side of the box, each slice into cells. Cells away from every border know the answer; in the
 * others a ray is cast within the slice and its signed crossings are counted.
 * A point on a border, to rounding, may come out either way.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { type ArcSpan, type LineSpan, type Loop, pointAlong, type Span, startAngle } from '#geometry/span.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';

/** A span that runs one way along the scan axis u; v is the other axis. Arcs keep their circle. */
interface MonotoneSpan {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
  /** Lowest and highest v: most rays are settled by these alone. */
  readonly low: number;
  readonly high: number;
  readonly cu: number;
  readonly cv: number;
  /** 0 for a line. */
  readonly radius: number;
  /** Which half of the circle: 1 for v above the centre, -1 below. */
  readonly half: number;
}

/** Made when it is first asked: of many an index nothing ever is. */
export interface InsideIndex {
  readonly loops: readonly Loop[];
  grid: Grid | undefined;
}

interface Grid {
  readonly swapped: boolean;
  /** Along the scan axis and across it: where slices and cells begin, and how many there are to the mm. */
  readonly originU: number;
  readonly originV: number;
  readonly slicesPerMm: number;
  readonly cellsPerMm: number;
  readonly cellCount: number;
  readonly slices: readonly (readonly MonotoneSpan[])[];
  /** Slice after slice: OUT, IN, or MIXED where a border runs through the cell. */
  readonly cells: Uint8Array;
}

const OUT = 0;
const IN = 1;
const MIXED = 2;

/** Up to as many spans, a ray against all of them is cheaper than slices and cells (measured). */
const FEW_SPANS = 12;

export function makeInsideIndex(loops: readonly Loop[]): InsideIndex {
  return { loops, grid: undefined };
}

function gridOf(loops: readonly Loop[]): Grid {
  const spans = loops.flat();
  const box = boxOfSpans(spans);
  const swapped = box.maxX - box.minX > box.maxY - box.minY;
  const [minU, minV, maxU, maxV] = swapped
    ? [box.minX, box.minY, box.maxX, box.maxY]
    : [box.minY, box.minX, box.maxY, box.maxX];
  // About 32 cells to a span, near enough square.
  const side =
    spans.length > FEW_SPANS
      ? Math.sqrt(((maxU - minU) * (maxV - minV)) / (32 * spans.length + 1))
      : Number.POSITIVE_INFINITY;
  const sliceCount = countOf(maxU - minU, side);
  const cellCount = countOf(maxV - minV, side);
  const grid = {
    swapped,
    originU: minU,
    originV: minV,
    slicesPerMm: sliceCount / (maxU - minU),
    cellsPerMm: cellCount / (maxV - minV),
    cellCount,
    slices: Array.from({ length: sliceCount }, (): MonotoneSpan[] => []),
    cells: new Uint8Array(sliceCount * cellCount),
  };
  for (const loop of loops) {
    loop.forEach((span, i) => {
      // Ends that differ in the last digit would leave a gap for a ray to slip through: one span ends where the next starts.
      const { start } = itemAt(loop, (i + 1) % loop.length);
      for (const part of monotoneSpansOf({ ...span, end: start }, swapped)) enter(grid, part);
    });
  }
  for (let slice = 0; slice < sliceCount; slice++) settleCells(grid, slice);
  return grid;
}

function countOf(extent: number, side: number): number {
  return extent > 0 ? Math.min(4096, Math.max(1, Math.ceil(extent / side))) : 0;
}

/** Puts a span into its slices and marks the cells that its box covers. */
function enter(grid: Grid & { readonly slices: readonly MonotoneSpan[][] }, span: MonotoneSpan): void {
  const { originU, originV, slicesPerMm, cellsPerMm, cellCount, slices, cells } = grid;
  // One slice and cell more on either side, against rounding at their edges.
  const first = Math.floor((Math.min(span.u0, span.u1) - originU) * slicesPerMm - 0.01);
  const last = Math.floor((Math.max(span.u0, span.u1) - originU) * slicesPerMm + 0.01);
  for (let slice = Math.max(0, first); slice <= Math.min(slices.length - 1, last); slice++) {
    itemAt(slices, slice).push(span);
    const [low, high] = reachInSlice(
      span,
      originU + slice / slicesPerMm,
      originU + (slice + 1) / slicesPerMm,
    );
    const from = Math.max(0, Math.floor((low - originV) * cellsPerMm - 0.01));
    const to = Math.min(cellCount - 1, Math.floor((high - originV) * cellsPerMm + 0.01));
    cells.fill(MIXED, slice * cellCount + from, slice * cellCount + to + 1);
  }
}

/** Lowest and highest v of a span between two places on the scan axis; for an arc those of the whole span. */
function reachInSlice(span: MonotoneSpan, from: number, to: number): [number, number] {
  const { u0, v0, u1, v1, low, high, radius } = span;
  if (radius > 0 || u0 === u1) return [low, high];
  const slope = (v1 - v0) / (u1 - u0);
  const a = Math.min(high, Math.max(low, v0 + (from - u0) * slope));
  const b = Math.min(high, Math.max(low, v0 + (to - u0) * slope));
  return [Math.min(a, b), Math.max(a, b)];
}

/** Cells that no border runs through are all in or all out, and change only across a mixed one. */
function settleCells(grid: Grid, slice: number): void {
  const { cells, cellCount, originU, originV, slicesPerMm, cellsPerMm } = grid;
  const u = originU + (slice + 0.5) / slicesPerMm;
  let state = OUT;
  for (let cell = 0; cell < cellCount; cell++) {
    const at = slice * cellCount + cell;
    if (cells[at] === MIXED) continue;
    if (cell > 0 && cells[at - 1] === MIXED) {
      const v = originV + (cell + 0.5) / cellsPerMm;
      state = windsRound(itemAt(grid.slices, slice), u, v) ? IN : OUT;
    }
    cells[at] = state;
  }
}

export function isInside(index: InsideIndex, x: number, y: number): boolean {
  index.grid ??= gridOf(index.loops);
  const { grid } = index;
  const u = grid.swapped ? x : y;
  const v = grid.swapped ? y : x;
  const slice = Math.floor((u - grid.originU) * grid.slicesPerMm);
  const cell = Math.floor((v - grid.originV) * grid.cellsPerMm);
  if (!(slice >= 0 && slice < grid.slices.length && cell >= 0 && cell < grid.cellCount)) return false;
  const state = grid.cells[slice * grid.cellCount + cell];
  return state === MIXED ? windsRound(itemAt(grid.slices, slice), u, v) : state === IN;
}

function windsRound(spans: readonly MonotoneSpan[], u: number, v: number): boolean {
  let winding = 0;
  for (const span of spans) {
    if (span.u0 <= u) {
      if (span.u1 > u && isBeyond(span, u, v)) winding++;
    } else if (span.u1 <= u && isBeyond(span, u, v)) winding--;
  }
  return winding !== 0;
}

/** Whether the span crosses the ray from (u, v) towards greater v. */
function isBeyond(span: MonotoneSpan, u: number, v: number): boolean {
  if (v < span.low) return true;
  if (v >= span.high) return false;
  if (span.radius === 0) {
    return span.v0 + ((u - span.u0) / (span.u1 - span.u0)) * (span.v1 - span.v0) > v;
  }
  const du = u - span.cu;
  const rise = Math.sqrt(Math.max(0, span.radius * span.radius - du * du));
  return span.cv + span.half * rise > v;
}

function monotoneSpansOf(span: Span, swapped: boolean): MonotoneSpan[] {
  if (span.kind === 'line') return [monotoneLine(span, swapped)];
  const shares = turningShares(span, swapped);
  return shares.slice(1).map((to, i) => monotoneArc(span, { from: itemAt(shares, i), to }, swapped));
}

function monotoneLine({ start, end }: LineSpan, swapped: boolean): MonotoneSpan {
  const [u0, v0, u1, v1] = swapped ? [start.x, start.y, end.x, end.y] : [start.y, start.x, end.y, end.x];
  return { u0, v0, u1, v1, low: Math.min(v0, v1), high: Math.max(v0, v1), cu: 0, cv: 0, radius: 0, half: 1 };
}

function monotoneArc(
  arc: ArcSpan,
  { from, to }: { from: number; to: number },
  swapped: boolean,
): MonotoneSpan {
  const start = from === 0 ? arc.start : pointAlong(arc, from);
  const end = to === 1 ? arc.end : pointAlong(arc, to);
  const middle = pointAlong(arc, (from + to) / 2);
  const { center, radius } = arc;
  const [u0, v0, u1, v1] = swapped ? [start.x, start.y, end.x, end.y] : [start.y, start.x, end.y, end.x];
  const [cu, cv] = swapped ? [center.x, center.y] : [center.y, center.x];
  const half = (swapped ? middle.y : middle.x) >= cv ? 1 : -1;
  // The span may hold its quarter point, where v is extreme.
  const bow = (u0 - cu) * (u1 - cu) < 0 ? cv + half * radius : v0;
  return { u0, v0, u1, v1, low: Math.min(v0, v1, bow), high: Math.max(v0, v1, bow), cu, cv, radius, half };
}

/** Shares at which an arc turns back along the scan axis, with both ends. */
function turningShares(arc: ArcSpan, swapped: boolean): number[] {
  const first = startAngle(arc);
  const low = Math.min(first, first + arc.sweep);
  const high = Math.max(first, first + arc.sweep);
  const offset = swapped ? 0 : Math.PI / 2;
  const inner: number[] = [];
  for (let k = Math.ceil((low - offset) / Math.PI); k * Math.PI + offset <= high; k++) {
    const share = (k * Math.PI + offset - first) / arc.sweep;
    if (share > SAME_COUNT && share < 1 - SAME_COUNT) inner.push(share);
  }
  return [0, ...inner.sort((a, b) => a - b), 1];
}
