/**
 * Slivers: faces narrower than a line can be placed, and slits between outlines, as two leave that were meant to be one. Each is made
 * one with the neighbour along which it lies longest, the larger of two alike: the edges between them go, and the edges on
 * its other side run for the curves of both. Nothing moves by more than the sliver was wide.
 * Cost: linear in edges; the arrangement is made again where there is a sliver.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, spanLength, spansLength } from '#geometry/span.ts';
import { ALIKE, AS_LARGE, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { arrange } from './arrange.ts';
import { type Arrangement, type ArrangementEdge, OUTSIDE, type SourcedSpan } from './arrangement.ts';
import { slitEnds } from './slit-ends.ts';

export interface Sliver {
  readonly at: Point;
  /** Twice its area by its border's length, mm: the width of a strip. */
  readonly width: number;
}

export interface WithoutSlivers {
  readonly arrangement: Arrangement;
  /** In the order of their places. */
  readonly slivers: readonly Sliver[];
}

/** Slivers side by side are merged one after the other, in as many rounds. */
const MOST_ROUNDS = 8;

export function mergeSlivers(drawn: Arrangement): WithoutSlivers {
  const faces = mergeFaces(drawn);
  const slits = mergeFaces(withSlitsClosed(faces.arrangement));
  const slivers = [...faces.slivers, ...slits.slivers];
  return {
    arrangement: slits.arrangement,
    slivers: slivers.sort((a, b) => a.at.x - b.at.x || a.at.y - b.at.y),
  };
}

function mergeFaces(drawn: Arrangement): WithoutSlivers {
  let arrangement = drawn;
  const slivers: Sliver[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const merging = mergersOf(arrangement);
    if (merging.length === 0) break;
    for (const { sliver } of merging) slivers.push(sliver);
    arrangement = withoutBorders(arrangement, merging);
  }
  return { arrangement, slivers };
}

function withSlitsClosed(drawn: Arrangement): Arrangement {
  const ends = slitEnds(drawn);
  if (ends.length === 0) return drawn;
  const across = ends.map(({ span, edge }) => ({ span, source: edge }));
  return arrangedAgain(drawn, [...drawn.edges.map(({ span }, source) => ({ span, source })), ...across]);
}

interface Merger {
  readonly sliver: Sliver;
  /** Edges that go, and those that stand for them too. */
  readonly gone: readonly number[];
  readonly stays: readonly number[];
}

/** One merger a sliver; of slivers side by side only one at a time. */
function mergersOf(arrangement: Arrangement): Merger[] {
  const { faces, edges } = arrangement;
  const touched = new Set<number>();
  return faces.flatMap((_, face): Merger[] => {
    const width = widthOf(arrangement, face);
    if (face === OUTSIDE || width >= SCRIBE_ACCURACY || touched.has(face)) return [];
    const border = itemAt(faces, face)
      .borders.flat()
      .map(({ edge }) => edge)
      .filter((edge) => itemAt(edges, edge).left !== itemAt(edges, edge).right);
    const neighbour = longestNeighbour(arrangement, face, border);
    const first = border[0];
    if (neighbour === undefined || first === undefined || touched.has(neighbour)) return [];
    touched.add(face).add(neighbour);
    const isBetween = (edge: number) => across(itemAt(edges, edge), face) === neighbour;
    return [
      {
        sliver: { at: pointAlong(itemAt(edges, first).span, 0.5), width },
        gone: border.filter(isBetween),
        stays: border.filter((edge) => !isBetween(edge)),
      },
    ];
  });
}

function widthOf({ faces }: Arrangement, face: number): number {
  const { area, loops } = itemAt(faces, face);
  const around = spansLength(loops.flat());
  return around === 0 ? Number.POSITIVE_INFINITY : (2 * area) / around;
}

function across({ left, right }: ArrangementEdge, face: number): number {
  return left === face ? right : left;
}

/** The neighbour along which a face lies longest; of those alike the largest. */
function longestNeighbour(
  { edges, faces }: Arrangement,
  face: number,
  border: readonly number[],
): number | undefined {
  const lengths = new Map<number, number>();
  for (const edge of border) {
    const other = across(itemAt(edges, edge), face);
    lengths.set(other, (lengths.get(other) ?? 0) + spanLength(itemAt(edges, edge).span));
  }
  const longest = [...lengths.values()].reduce((most, length) => Math.max(most, length), 0);
  const lowOf = (other: number) => boxOfSpans(itemAt(faces, other).loops.flat());
  const sizeOf = (other: number) =>
    other === OUTSIDE ? Number.POSITIVE_INFINITY : itemAt(faces, other).area;
  const alike = [...lengths].filter(([, length]) => length >= longest * (1 - ALIKE)).map(([other]) => other);
  const largest = alike.reduce((most, other) => Math.max(most, sizeOf(other)), 0);
  // Of several as large, but for rounding, the one that lies lowest, then left.
  return alike
    .filter((other) => !(sizeOf(other) < largest * (1 - AS_LARGE)))
    .sort((a, b) => compareLows(lowOf(a), lowOf(b)))[0];
}

function compareLows(a: Box, b: Box): number {
  if (Math.abs(a.minY - b.minY) > SCRIBE_ACCURACY) return a.minY - b.minY;
  return a.minX - b.minX;
}

function withoutBorders({ edges }: Arrangement, mergers: readonly Merger[]): Arrangement {
  const gone = new Set(mergers.flatMap((merger) => merger.gone));
  const more = new Map<number, number[]>();
  for (const merger of mergers) {
    const sources = merger.gone.flatMap((edge) => itemAt(edges, edge).sources);
    for (const edge of merger.stays) more.set(edge, [...(more.get(edge) ?? []), ...sources]);
  }
  const kept = edges.flatMap(({ span }, source) => (gone.has(source) ? [] : [{ span, source }]));
  return arrangedAgain({ edges }, kept, more);
}

/** Edges of an arrangement, each span sourced by its number there, with whatever sources else they take over. */
function arrangedAgain(
  { edges }: Pick<Arrangement, 'edges'>,
  kept: readonly SourcedSpan[],
  more: ReadonlyMap<number, readonly number[]> = new Map(),
): Arrangement {
  const { arrangement } = arrange(kept, { joinTolerance: 0 });
  const sourcesOf = (edge: number) => [...itemAt(edges, edge).sources, ...(more.get(edge) ?? [])];
  return {
    ...arrangement,
    edges: arrangement.edges.map((edge) => ({
      ...edge,
      sources: [...new Set(edge.sources.flatMap(sourcesOf))].sort((a, b) => a - b),
    })),
  };
}
