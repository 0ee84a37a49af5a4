/**
 * The etched part as a solid where both faces are etched: two reliefs over what is left of the sheet, the far one turned over, and walls
 * between their rims; holes are holes, with their cusps (M9.5). Both reliefs are made over one outline, so that their rims share the
 * corners of every line and the places that divide its arcs; what each has between two of them lies on one chord, and the strip between
 * is closed from one end to the other. So each edge belongs to two triangles, whatever the reliefs have on their rims.
 */

import type { BothFronts } from '#front/both-fronts.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { indexFront } from '#front/front-index.ts';
import { metalLeft } from '#front/metal-left.ts';
import { looseEdges, type ReliefTrouble } from '#front/relief/check-relief.ts';
import { type ReliefAsk, type ReliefMesh, reliefMesh } from '#front/relief/relief-mesh.ts';
import { itemAt } from '#geometry/assert.ts';
import { growLoops } from '#geometry/grow/grow-loops.ts';
import { type Loop, loopArea, loopsArea, spansLength } from '#geometry/span.ts';
import { LEAST_PIECE, SOLID_AGREEMENT } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { EtchedSolid } from './etched-solid.ts';

export interface TwoFacedAsk extends BothFronts {
  /** mm by which the solid may leave the fronts. */
  readonly tolerance: number;
  readonly stock: Pick<Job['stock'], 'thickness'>;
  /** As measured on the fronts, mm³. */
  readonly removed: number;
  readonly sheetVolume: number;
}

/** mm that holes are taken wider by, so that their rims have a little metal between the faces. */
const HAIR = 2e-3;

export function twoFacedSolid(ask: TwoFacedAsk): EtchedSolid {
  const outline = wholePieces(ask);
  const solid = overOutline(outline, ask);
  if ('trouble' in solid) return solid;
  const trouble = volumeTrouble(solid.mesh, ask, outline);
  return trouble === undefined ? solid : { trouble };
}

export interface TwoFacedRelief extends BothFronts, Required<ReliefAsk> {
  readonly stock: TwoFacedAsk['stock'];
}

/** At a minute, to be looked at: closed, but its volume is held against nothing. */
export function twoFacedRelief(ask: TwoFacedRelief): EtchedSolid {
  return overOutline(wholePieces(ask, ask.minute), ask);
}

type OutlineAsk = BothFronts & ReliefAsk & Pick<TwoFacedAsk, 'stock'>;

function overOutline(outline: readonly Loop[], ask: OutlineAsk): EtchedSolid {
  const { tolerance, minute } = ask;
  const [near, far] = [ask.near, ask.far].map(({ index }) =>
    reliefMesh(makeContourKit(indexFront({ ...index.front, sheet: outline })), { tolerance, minute }),
  ) as [ReliefMesh, ReliefMesh];
  const mesh = joinFaces(near, far, ask.stock.thickness);
  const open = mesh === undefined ? 1 : looseEdges(mesh);
  if (mesh === undefined || open > 0) return { trouble: { trouble: 'open edges', value: open, limit: 0 } };
  return { mesh };
}

/** Holes a hair wider; slivers of metal between them are left out. */
function wholePieces(ask: BothFronts, minute?: number): readonly Loop[] {
  const left = metalLeft(ask, minute);
  const { sheet } = ask.near.index.front;
  if (left === sheet) return sheet;
  // Growing what is no metal: the same loops the other way round.
  const isRim = new Set(sheet);
  return left
    .flatMap((loop) => (isRim.has(loop) || loopArea(loop) > 0 ? [loop] : grownHole(loop)))
    .filter((loop) => Math.abs(loopArea(loop)) > LEAST_PIECE);
}

function grownHole(hole: Loop): Loop[] {
  const reversed = hole.map(turnedAround).reverse();
  return growLoops([reversed], HAIR)
    .filter((loop) => loopArea(loop) > 0)
    .map((loop) => loop.map(turnedAround).reverse());
}

function turnedAround(span: Loop[number]): Loop[number] {
  const ends = { start: span.end, end: span.start };
  return span.kind === 'line' ? { ...span, ...ends } : { ...span, ...ends, sweep: -span.sweep };
}

/** Undefined where the rims do not run along each other. */
function joinFaces(
  near: ReliefMesh,
  far: ReliefMesh,
  thickness: Job['stock']['thickness'],
): ReliefMesh | undefined {
  const count = near.positions.length / 3;
  const positions = new Float32Array(near.positions.length + far.positions.length);
  positions.set(near.positions);
  for (let i = 0; i < far.positions.length; i += 3) {
    const [x, y] = [itemAt(far.positions, i), itemAt(far.positions, i + 1)];
    const sheet = sheetAt(thickness, { x: x + far.origin.x, y: y + far.origin.y });
    positions[near.positions.length + i] = x;
    positions[near.positions.length + i + 1] = y;
    positions[near.positions.length + i + 2] = -sheet - itemAt(far.positions, i + 2);
  }
  const walls = wallsBetween(near, far, positions);
  if (walls === undefined) return undefined;
  const top = near.indices.subarray(0, 3 * near.faceCount);
  const bottom = far.indices.subarray(0, 3 * far.faceCount);
  const indices = new Uint32Array(top.length + bottom.length + walls.length);
  indices.set(top);
  bottom.forEach((_, i) => {
    // Turned over, to be seen from below.
    const from = i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1;
    indices[top.length + i] = itemAt(bottom, from) + count;
  });
  indices.set(walls, top.length + bottom.length);
  const stageOfTriangle = new Uint8Array(indices.length / 3);
  stageOfTriangle.set(near.stageOfTriangle.subarray(0, near.faceCount));
  stageOfTriangle.set(far.stageOfTriangle.subarray(0, far.faceCount), near.faceCount);
  const faceCount = near.faceCount + far.faceCount;
  return packed({ ...near, positions, indices, stageOfTriangle, faceCount });
}

/** Corners that no triangle uses are left out. */
function packed(mesh: ReliefMesh): ReliefMesh {
  const numberOf = new Int32Array(mesh.positions.length / 3).fill(-1);
  const kept: number[] = [];
  const indices = mesh.indices.map((vertex) => {
    if (itemAt(numberOf, vertex) < 0) {
      numberOf[vertex] = kept.length / 3;
      kept.push(...mesh.positions.subarray(3 * vertex, 3 * vertex + 3));
    }
    return itemAt(numberOf, vertex);
  });
  return { ...mesh, positions: Float32Array.from(kept), indices };
}

/** Triangles between both rims, seen from outside; corners of the far face are counted after those of the near one. */
function wallsBetween(near: ReliefMesh, far: ReliefMesh, positions: Float32Array): number[] | undefined {
  const count = near.positions.length / 3;
  const [nextNear, nextFar] = [rimOf(near, 0), rimOf(far, count)];
  if (nextNear === undefined || nextFar === undefined) return undefined;
  const at = (vertex: number) => `${itemAt(positions, 3 * vertex)} ${itemAt(positions, 3 * vertex + 1)}`;
  const farAt = new Map([...nextFar.keys()].map((vertex) => [at(vertex), vertex]));
  const walls: number[] = [];
  let used = 0;
  for (const start of nextNear.keys()) {
    const below = farAt.get(at(start));
    if (below === undefined) continue;
    // From one corner that both rims have to the next.
    const above = chainFrom(nextNear, start, (vertex) => farAt.has(at(vertex)));
    const last = above.at(-1);
    const end = last === undefined ? undefined : farAt.get(at(last));
    if (end === undefined) return undefined;
    const under = chainFrom(nextFar, below, (vertex) => vertex === end);
    if (under.at(-1) !== end) return undefined;
    used += under.length - 1;
    zip(above, under, positions, walls);
  }
  return used === nextFar.size ? walls : undefined;
}

/** Each corner of the rim with the one that follows it, metal on the left; undefined where two rims share a corner. */
function rimOf({ indices, faceCount }: ReliefMesh, first: number): Map<number, number> | undefined {
  const edges = new Set<string>();
  for (let i = 0; i < 3 * faceCount; i++)
    edges.add(`${itemAt(indices, i)} ${itemAt(indices, nextCorner(i))}`);
  const next = new Map<number, number>();
  for (let i = 0; i < 3 * faceCount; i++) {
    const [from, to] = [itemAt(indices, i), itemAt(indices, nextCorner(i))];
    if (edges.has(`${to} ${from}`)) continue;
    if (next.has(from + first)) return undefined;
    next.set(from + first, to + first);
  }
  return next;
}

function nextCorner(i: number): number {
  return i % 3 === 2 ? i - 2 : i + 1;
}

/** From a corner to the next that ends it, both counted in; no further than once round. */
function chainFrom(
  next: ReadonlyMap<number, number>,
  start: number,
  isEnd: (vertex: number) => boolean,
): number[] {
  const chain = [start];
  for (let at = next.get(start); at !== undefined && chain.length <= next.size; at = next.get(at)) {
    chain.push(at);
    if (isEnd(at)) break;
  }
  return chain;
}

/** A strip between two chains over one chord: always on by the one that comes first along it. */
function zip(
  above: readonly number[],
  under: readonly number[],
  positions: Float32Array,
  into: number[],
): void {
  const [start, end] = [itemAt(above, 0), itemAt(above, above.length - 1)];
  const place = (vertex: number, axis: 0 | 1) => itemAt(positions, 3 * vertex + axis);
  const [dx, dy] = [place(end, 0) - place(start, 0), place(end, 1) - place(start, 1)];
  const along = (vertex: number) =>
    (place(vertex, 0) - place(start, 0)) * dx + (place(vertex, 1) - place(start, 1)) * dy;
  let [i, j] = [0, 0];
  while (i + 1 < above.length || j + 1 < under.length) {
    const isAbove =
      j + 1 === under.length ||
      (i + 1 < above.length && along(itemAt(above, i + 1)) <= along(itemAt(under, j + 1)));
    if (isAbove) {
      into.push(itemAt(above, i + 1), itemAt(above, i), itemAt(under, j));
      i++;
    } else {
      into.push(itemAt(above, i), itemAt(under, j), itemAt(under, j + 1));
      j++;
    }
  }
}

function volumeTrouble(
  mesh: ReliefMesh,
  ask: TwoFacedAsk,
  outline: readonly Loop[],
): ReliefTrouble | undefined {
  const { volume, surface } = measured(mesh);
  const left = ask.sheetVolume - ask.removed;
  const rims = outline.reduce((sum, loop) => sum + spansLength(loop), 0);
  const chords = rims * (ask.tolerance + HAIR) * ask.thickness;
  const slack =
    Math.max(SOLID_AGREEMENT * ask.removed, ask.tolerance * (surface - 2 * loopsArea(outline))) + chords;
  const off = Math.abs(volume - left);
  return off <= slack
    ? undefined
    : { trouble: 'volume', value: off / ask.removed, limit: slack / ask.removed };
}

/** mm³ and mm²: by tetrahedra from a corner. */
function measured({ positions, indices }: ReliefMesh): { volume: number; surface: number } {
  let [volume, surface] = [0, 0];
  const at = (corner: number, axis: number) => itemAt(positions, 3 * itemAt(indices, corner) + axis);
  const [ox, oy, oz] = [at(0, 0), at(0, 1), at(0, 2)];
  for (let i = 0; i < indices.length; i += 3) {
    const [ax, ay, az] = [at(i, 0) - ox, at(i, 1) - oy, at(i, 2) - oz];
    const [ux, uy, uz] = [at(i + 1, 0) - ox - ax, at(i + 1, 1) - oy - ay, at(i + 1, 2) - oz - az];
    const [vx, vy, vz] = [at(i + 2, 0) - ox - ax, at(i + 2, 1) - oy - ay, at(i + 2, 2) - oz - az];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    volume += (ax * nx + ay * ny + az * nz) / 6;
    surface += Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  }
  return { volume, surface };
}
