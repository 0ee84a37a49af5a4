/**
 * The ground of a relief: all of the sheet that is not covered by strips, as one triangulation in plan. Its edges are the
 * sheet's rim, the borders of the strips, and every contour between that is no strip's; so it tiles the sheet together with
 * the strips, whatever the contours are like. A contour that is missing or false costs likeness, never that.
 */

import { isNearFront } from '#front/near-front.ts';
import { assert, itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { constrainedTriangles, type Triangulation } from './constrained-triangles.ts';
import { cutCrossings } from './cut-crossings.ts';
import { placeOn } from './lattice.ts';
import { addCorner, addTriangle, type MeshDraft } from './mesh-draft.ts';
import { PairIndex } from './pair-index.ts';
import { refineCrests } from './refine-crests.ts';

/** What an edge is: bits. Two of one kind on each other are none, for the area begins and ends there. */
export const EDGE = { plain: 1, rim: 2, strip: 4 } as const;

const { plain, rim, strip } = EDGE;

/** Edges between corners of the draft, as three lists. */
export interface GroundEdges {
  readonly starts: number[];
  readonly ends: number[];
  readonly kinds: number[];
}

export function addEdge(
  { starts, ends, kinds }: GroundEdges,
  start: number,
  end: number,
  kind: number,
): void {
  starts.push(start);
  ends.push(end);
  kinds.push(kind);
}

export interface GroundRules {
  /** Height at a place of the drawing, mm. */
  readonly heightAt: (x: number, y: number) => number;
  /** Whether a height is that of land or of a floor. */
  readonly isFlat: (height: number) => boolean;
  /** mm by which the ground may leave the front. */
  readonly tolerance: number;
  /** Stage number of a triangle of the draft's corners. */
  readonly stageOf: (a: number, b: number, c: number) => number;
}

export interface Ground {
  /** Edges of the rim in the sheet's direction, by corner of the draft: start, end, start, end, …. */
  readonly rim: readonly number[];
  /** By corner of the draft, where it differs: the corner that stands for it, at the same place. */
  readonly sameAs: ReadonlyMap<number, number>;
}

/** Adds the ground's triangles; undefined where something crosses a strip's border, or the edges do not come apart. */
export function addGround(draft: MeshDraft, edges: GroundEdges, rules: GroundRules): Ground | undefined {
  const points = new GroundPoints(draft, rules);
  const starts = edges.starts.map((corner) => points.of(corner));
  const ends = edges.ends.map((corner) => points.of(corner));
  const { segments, cut } = cutCrossings(points, { starts, ends, tags: edges.kinds }, points.at, joinKinds);
  if (segments === undefined || cut.some((kind) => (kind & strip) !== 0)) return undefined;
  const frame = points.addFrame();
  const net = constrainedTriangles(points, segments);
  const kept = keptTriangles(net, frame);
  const { triangles, twins, partOf } = refineCrests(net, {
    xs: points.xs,
    ys: points.ys,
    step: draft.lattice.step,
    heightOf: points.heightOf,
    isNear: points.isNear,
    add: points.at,
    isKept: (triangle) => kept[triangle] === KEPT,
    isFlat: rules.isFlat,
    tolerance: rules.tolerance,
  });
  const { corners, sameAs } = points;
  const border: number[] = [];
  const cornerAt = (edge: number): number => itemAt(corners, itemAt(triangles, edge));
  for (let first = 0; first < triangles.length; first += 3) {
    if (kept[itemAt(partOf, first / 3)] !== KEPT) continue;
    const a = cornerAt(first);
    const b = cornerAt(first + 1);
    const c = cornerAt(first + 2);
    addTriangle(draft, [a, b, c], rules.stageOf(a, b, c));
    for (let edge = first; edge < first + 3; edge++) {
      const beyond = itemAt(partOf, Math.floor(itemAt(twins, edge) / 3));
      if ((itemAt(kept, beyond) & INSIDE) !== 0) continue;
      border.push(cornerAt(edge), cornerAt(edge === first + 2 ? first : edge + 1));
    }
  }
  return { rim: border, sameAs };
}

/** Plain stays plain; of a rim or a strip's border lying on another of its kind nothing is left to cross. */
function joinKinds(a: number, b: number): number {
  return plain | ((a ^ b) & (rim | strip));
}

/** The ground's corners: one at each place of the lattice. */
class GroundPoints {
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  /** By point: the draft's corner. */
  readonly corners: number[] = [];
  readonly sameAs = new Map<number, number>();
  readonly #draft: MeshDraft;
  readonly #rules: GroundRules;
  readonly #byPlace = new PairIndex();
  /** By corner of the draft, 1 more than its point; 0 where it has none. */
  readonly #pointOf: Int32Array;

  constructor(draft: MeshDraft, rules: GroundRules) {
    this.#draft = draft;
    this.#rules = rules;
    this.#pointOf = new Int32Array(draft.vertexCount);
  }

  /** The point of a corner of the draft. */
  of(corner: number): number {
    const seen = this.#pointOf[corner] as number;
    if (seen > 0) return seen - 1;
    const x = this.#draft.xs[corner] as number;
    const y = this.#draft.ys[corner] as number;
    let point = this.#byPlace.find(x, y);
    if (point < 0) point = this.#add(x, y, corner);
    else this.sameAs.set(corner, itemAt(this.corners, point));
    this.#pointOf[corner] = point + 1;
    return point;
  }

  /** The point nearest to a place between those of the lattice, in its steps; a new one has the height of that very place. */
  readonly at = (x: number, y: number): number => {
    const [nearX, nearY] = [Math.round(x), Math.round(y)];
    const known = this.#byPlace.find(nearX, nearY);
    if (known >= 0) return known;
    const place = placeOn(this.#draft.lattice, { x, y });
    const z = this.#rules.heightAt(place.x, place.y);
    return this.#add(nearX, nearY, addCorner(this.#draft, nearX, nearY, z));
  };

  /** Whether the front passes a place between those of the lattice at a height, to the tolerance. */
  readonly isNear = (place: Point, height: number): boolean => {
    const { heightAt, tolerance } = this.#rules;
    return isNearFront(heightAt, placeOn(this.#draft.lattice, place), { height, tolerance });
  };

  readonly heightOf = (point: number): number => itemAt(this.#draft.zs, itemAt(this.corners, point));

  /** Four points around all others, of which no triangle is kept. Gives the number of the first. */
  addFrame(): number {
    const first = this.xs.length;
    let [minX, minY, maxX, maxY] = [0, 0, 0, 0];
    for (let i = 0; i < first; i++) {
      minX = Math.min(minX, itemAt(this.xs, i));
      minY = Math.min(minY, itemAt(this.ys, i));
      maxX = Math.max(maxX, itemAt(this.xs, i));
      maxY = Math.max(maxY, itemAt(this.ys, i));
    }
    const room = Math.ceil(Math.max(maxX - minX, maxY - minY) / 8) + 16;
    for (const [x, y] of [
      [minX - room, minY - room],
      [maxX + room, minY - room],
      [maxX + room, maxY + room],
      [minX - room, maxY + room],
    ] as const) {
      this.#add(x, y, NO_CORNER);
    }
    return first;
  }

  #add(x: number, y: number, corner: number): number {
    this.xs.push(x);
    this.ys.push(y);
    this.corners.push(corner);
    return this.#byPlace.add(x, y);
  }
}

/** Of the frame, which is no part of the draft. */
const NO_CORNER = -1;

/** Bits of a triangle's place: on the sheet, under a strip; and what it is while not known. */
const INSIDE = 1;
const COVERED = 2;
const UNKNOWN = 4;
const KEPT = INSIDE;

/** By triangle: where it lies, found from the frame inwards over every edge. */
function keptTriangles({ triangles, twins, tags }: Triangulation, frame: number): Uint8Array {
  const places = new Uint8Array(triangles.length / 3).fill(UNKNOWN);
  const waiting: number[] = [];
  for (let corner = 0; corner < triangles.length; corner++) {
    const triangle = Math.floor(corner / 3);
    if (itemAt(triangles, corner) < frame || places[triangle] === 0) continue;
    places[triangle] = 0;
    waiting.push(triangle);
  }
  for (let triangle = waiting.pop(); triangle !== undefined; triangle = waiting.pop()) {
    const here = itemAt(places, triangle);
    for (let edge = 3 * triangle; edge < 3 * triangle + 3; edge++) {
      const twin = itemAt(twins, edge);
      if (twin < 0) continue;
      const tag = itemAt(tags, edge);
      const there = here ^ ((tag & rim) !== 0 ? INSIDE : 0) ^ ((tag & strip) !== 0 ? COVERED : 0);
      const neighbour = Math.floor(twin / 3);
      const known = itemAt(places, neighbour);
      assert(known === UNKNOWN || known === there, 'rim and strips have an inside');
      if (known !== UNKNOWN) continue;
      places[neighbour] = there;
      waiting.push(neighbour);
    }
  }
  return places;
}
