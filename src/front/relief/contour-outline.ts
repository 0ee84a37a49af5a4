/**
 * A contour as mesh corners: each segment a chain of them, segments that meet sharing one, chains linked into loops.
 * Arcs are divided at absolute angles, whole fractions of a turn by powers of two, so that arcs about one centre have
 * their corners on the same rays at every depth: the bands between contours come out regular and mostly do not cross.
 */

import { liveSegments, type Nodes } from '#front/contours/chain-segments.ts';
import type { ContourSegment } from '#front/contours/contour-segments.ts';
import type { Feature } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { acos } from '#maths/arc-cosine.ts';
import { cos, sin } from '#maths/sine.ts';
import { addVertex, isSamePlace, type MeshDraft } from './mesh-draft.ts';

/** A run of corners from one node to the next. */
export interface Chain {
  readonly vertices: readonly number[];
  readonly feature: Feature;
}

/** A closed run of corners; the first is not repeated. */
export interface VertexLoop {
  readonly vertices: readonly number[];
  /** Stage index of the edge that starts at each corner. */
  readonly stages: readonly number[];
  /** What the loop's segments are offset from. */
  readonly features: readonly Feature[];
}

export interface Outline {
  /** All that is drawn of the contour, whether it closes or not. */
  readonly chains: readonly Chain[];
  /** Rings of the border with the floor at this depth counted in, and without: the same array where there is no floor. */
  readonly withFloor: readonly VertexLoop[];
  readonly withoutFloor: readonly VertexLoop[];
  /** Whether every border closes. */
  readonly isWhole: boolean;
}

/** Lays the segments of one depth down as corners. Chords leave arcs by at most `sag` mm. */
export function outlineOf(draft: MeshDraft, nodes: Nodes, { z, sag }: { z: number; sag: number }): Outline {
  const { segments } = nodes;
  const wanted = (key: 'withFloor' | 'withoutFloor') =>
    liveSegments(
      nodes,
      segments.flatMap((segment, i) => (segment[key] ? [i] : [])),
    );
  const hasFloor = segments.some((segment) => segment.withFloor !== segment.withoutFloor);
  const outer = wanted('withFloor');
  const inner = hasFloor ? wanted('withoutFloor') : outer;
  const isWhole = outer.gap === undefined && inner.gap === undefined;
  const shown = isWhole ? [...new Set([...outer.live, ...inner.live])] : segments.map((_, i) => i);
  const chains = chainsOf(draft, nodes, shown, { z, sag });
  const loopsFrom = (live: readonly number[]): VertexLoop[] =>
    isWhole
      ? loopsOf(
          draft,
          live.flatMap((segment) => chains.get(segment) ?? []),
        )
      : [];
  const withFloor = loopsFrom(outer.live);
  return {
    chains: [...chains.values()],
    withFloor,
    withoutFloor: hasFloor ? loopsFrom(inner.live) : withFloor,
    isWhole,
  };
}

/** By segment; none for a segment whose corners all fall on one place of the lattice. */
function chainsOf(
  draft: MeshDraft,
  { segments, starts, ends, xs, ys }: Nodes,
  shown: readonly number[],
  { z, sag }: { z: number; sag: number },
): Map<number, Chain> {
  const vertices = new Map<number, number>();
  const vertexOf = (node: number): number => {
    let vertex = vertices.get(node);
    if (vertex === undefined) {
      vertex = addVertex(draft, itemAt(xs, node), itemAt(ys, node), z);
      vertices.set(node, vertex);
    }
    return vertex;
  };
  const chains = new Map<number, Chain>();
  for (const i of shown) {
    const segment = itemAt(segments, i);
    const start = vertexOf(itemAt(starts, i));
    const run = [start];
    let last = start;
    for (const vertex of insideOf(draft, segment, z, sag)) {
      if (isSamePlace(draft, last, vertex)) continue;
      run.push(vertex);
      last = vertex;
    }
    const end = vertexOf(itemAt(ends, i));
    while (run.length > 1 && isSamePlace(draft, itemAt(run, run.length - 1), end)) run.pop();
    run.push(end);
    chains.set(i, { vertices: run, feature: segment.curve.feature });
  }
  return chains;
}

/** Corners inside a segment: none on a line; on an arc those at whole fractions of a turn, and at least one. */
function insideOf(draft: MeshDraft, { curve, from, to }: ContourSegment, z: number, sag: number): number[] {
  if (curve.radius === 0) return [];
  const { feature, radius } = curve;
  const first = feature.from + feature.sweep * from;
  const last = feature.from + feature.sweep * to;
  return turnsBetween(first, last, radius, sag).map((angle) =>
    addVertex(draft, feature.cx + radius * cos(angle), feature.cy + radius * sin(angle), z),
  );
}

/** Angles strictly between two at which an arc is divided; never none, so that two arcs cannot fall into one chord. */
export function turnsBetween(first: number, last: number, radius: number, sag: number): number[] {
  const step = (2 * Math.PI) / divisionsOf(radius, sag);
  const way = Math.sign(last - first);
  const angles: number[] = [];
  // A corner nearer to an end than a thousandth of a step would only make a sliver.
  const margin = step / 1000;
  let k = way > 0 ? Math.ceil((first + margin) / step) : Math.floor((first - margin) / step);
  while (way * (last - k * step) > margin) {
    angles.push(k * step);
    k += way;
  }
  return angles.length === 0 ? [(first + last) / 2] : angles;
}

/** Chords to a full turn: a power of two, at least 8. */
function divisionsOf(radius: number, sag: number): number {
  if (radius <= sag) return 8;
  const needed = Math.PI / acos(1 - sag / radius);
  let divisions = 8;
  while (divisions < needed) divisions *= 2;
  return divisions;
}

export function reverseLoop({ vertices, stages, features }: VertexLoop): VertexLoop {
  const count = vertices.length;
  return {
    vertices: vertices.map((_, i) => itemAt(vertices, count - 1 - i)),
    stages: stages.map((_, i) => itemAt(stages, (2 * count - 2 - i) % count)),
    features,
  };
}

/** Rings from chains, each followed by any that starts where it ends. */
function loopsOf(draft: MeshDraft, chains: readonly Chain[]): VertexLoop[] {
  const leaving = new Map<number, Chain[]>();
  for (const chain of chains) {
    const start = itemAt(chain.vertices, 0);
    const list = leaving.get(start);
    if (list === undefined) leaving.set(start, [chain]);
    else list.push(chain);
  }
  const loops: VertexLoop[] = [];
  for (const start of leaving.keys()) {
    for (;;) {
      const way: Chain[] = [];
      let end = start;
      for (let chain = leaving.get(end)?.pop(); chain !== undefined; chain = leaving.get(end)?.pop()) {
        way.push(chain);
        end = itemAt(chain.vertices, chain.vertices.length - 1);
        if (end === start) break;
      }
      if (way.length === 0) break;
      const loop = loopOf(draft, way);
      if (loop.vertices.length > 2) loops.push(loop);
    }
  }
  return loops;
}

function loopOf(draft: MeshDraft, way: readonly Chain[]): VertexLoop {
  const vertices: number[] = [];
  const stages: number[] = [];
  for (const { vertices: run, feature } of way) {
    for (let i = 0; i + 1 < run.length; i++) {
      // Nodes nearer to each other than the lattice's step are one corner.
      if (isSamePlace(draft, itemAt(run, i), itemAt(run, i + 1))) continue;
      vertices.push(itemAt(run, i));
      stages.push(feature.stage);
    }
  }
  return { vertices, stages, features: way.map(({ feature }) => feature) };
}
