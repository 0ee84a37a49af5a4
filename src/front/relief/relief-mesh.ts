/**
 * The etched part as a watertight solid, built from exact contours (M2.7): land, walls between contours, flat floors, the sheet's
 * sides and back. Seen from above every place of the sheet lies under exactly one triangle, by construction: walls that are
 * plain strips between two contours tile the ground between them, and one triangulation tiles the rest. So every edge
 * belongs to exactly two triangles, also where walls touch. Size goes with tolerance, not with the part: floors are a few triangles.
 *
 * Where the front is deeper than the sheet is thick the floor is held just above the back, so that the solid stays one.
 */

import { type ContourKit, clipNearCluster, makeClipBorder } from '#front/contours/contour-kit.ts';
import { momentAt } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, type Span, startAngle } from '#geometry/span.ts';
import { SAME_WHOLE_SUM } from '#geometry/tolerances.ts';
import { cos, sin } from '#maths/sine.ts';
import { type Outline, turnsBetween, type VertexLoop } from './contour-outline.ts';
import { endlessSheet } from './endless-sheet.ts';
import { addEdge, addGround, EDGE, type Ground, type GroundEdges, type GroundRules } from './ground-mesh.ts';
import { latticeFor, placeOn } from './lattice.ts';
import { addCorner, addTriangle, addVertex, doubleArea, emptyDraft, type MeshDraft } from './mesh-draft.ts';
import { groundRules, zipRules } from './relief-rules.ts';
import { stackContours } from './stack-contours.ts';
import { zipBands } from './zip-bands.ts';

export interface ReliefMesh {
  /** Where the positions are counted from in the drawing's frame, whole mm; the drawing's own origin unless the part lies far from it. */
  readonly origin: Point;
  /** x, y, z by vertex; z up, 0 at the as-received surface. */
  readonly positions: Float32Array;
  /** Three by triangle, counter-clockwise seen from outside. */
  readonly indices: Uint32Array;
  /** Number of the stage that stands deepest there; 0 for untouched metal, sides and back. */
  readonly stageOfTriangle: Uint8Array;
  /** How many triangles make the etched face; they come first. */
  readonly faceCount: number;
  /** Of the polygon that the sheet's border was divided into, mm². */
  readonly sheetArea: number;
}

export interface ReliefAsk {
  /** Immersed minute; the end of the run when not given. */
  readonly minute?: number | undefined;
  /** mm by which the mesh may leave the front; default 0.02. */
  readonly tolerance?: number | undefined;
}

const DEFAULT_TOLERANCE = 0.02;
/** mm of metal left standing where the etch goes through. */
const SKIN = 1e-3;

export function reliefTolerance({ tolerance = DEFAULT_TOLERANCE }: ReliefAsk): number {
  return tolerance;
}

/** Unchecked: what is shown or written comes from `checkedRelief`. */
export function reliefMesh(kit: ContourKit, ask: ReliefAsk = {}): ReliefMesh {
  const { minute } = ask;
  const { index } = kit;
  const { front } = index;
  const loops = front.sheet.length > 0 ? front.sheet : endlessSheet(index);
  const draft = emptyDraft(latticeFor(boxOfSpans(loops.flat())));
  const moment = momentAt(front, minute);
  const heightOf = (depth: number): number => Math.max(-depth, SKIN - front.thickness) + 0;
  // Chords in plan and in profile may err the same way, and their errors add up.
  const sag = reliefTolerance(ask) / 2;
  const sheet = makeClipBorder(kit, loops);
  const stacks = kit.clusters.map((cluster) => ({
    outlines: stackContours(draft, kit, cluster, { moment, sag, heightOf }),
    // The rim would cut through strips.
    isAmid: clipNearCluster(sheet, cluster) === undefined,
  }));
  const rules = groundRules(draft, kit, { minute, heightOf, tolerance: reliefTolerance(ask) });
  const rim = rimRings(draft, loops, rules, sag);
  const sheetArea = areaOf(draft, rim);
  const zip = zipRules(draft, rules, {
    numbers: front.stages.map(({ number }) => number),
    longest: 2 * Math.sqrt(8 * Math.max(0, ...moment.cuts) * sag),
  });
  let ground: Ground | undefined;
  for (const isAllowed of [true, false]) {
    draft.triangleCount = 0;
    const edges: GroundEdges = { starts: [], ends: [], kinds: [] };
    for (const loop of rim) addRing(edges, loop, EDGE.rim);
    for (const { outlines, isAmid } of stacks) {
      const strips = isAllowed && isAmid ? zipBands(draft, outlines, zip) : new Map<VertexLoop, number>();
      for (const outline of outlines) addOutline({ draft, edges, heightAt: rules.heightAt }, outline, strips);
    }
    ground = addGround(draft, edges, rules);
    if (ground !== undefined && isTiled(draft, ground)) break;
  }
  mergeCorners(draft, ground?.sameAs);
  const faceCount = draft.triangleCount;
  closeBelow(draft, ground?.rim ?? [], -front.thickness);
  return finished(draft, faceCount, sheetArea * draft.lattice.step * draft.lattice.step);
}

/** The sheet's border as corners at the front's height. */
function rimRings(
  draft: MeshDraft,
  loops: readonly Loop[],
  { heightAt }: GroundRules,
  sag: number,
): number[][] {
  return loops.map((loop) =>
    loop.flatMap((span) => pointsOf(span, sag)).map(({ x, y }) => addVertex(draft, x, y, heightAt(x, y))),
  );
}

/** Its start, and where an arc is divided. */
function pointsOf(span: Span, sag: number): Point[] {
  if (span.kind === 'line') return [span.start];
  const { start, center, radius, sweep } = span;
  const first = startAngle(span);
  const inner = turnsBetween(first, first + sweep, radius, sag).map((angle) => ({
    x: center.x + radius * cos(angle),
    y: center.y + radius * sin(angle),
  }));
  return [start, ...inner];
}

function addRing(edges: GroundEdges, vertices: readonly number[], kind: number): void {
  let start = itemAt(vertices, vertices.length - 1);
  for (const end of vertices) {
    addEdge(edges, start, end, kind);
    start = end;
  }
}

/** What the ground must know of a contour: a strip's border where walls begin or end, nothing between strips, else all of it. */
function addOutline(
  { draft, edges, heightAt }: Pick<GroundRules, 'heightAt'> & { draft: MeshDraft; edges: GroundEdges },
  outline: Outline,
  strips: ReadonlyMap<VertexLoop, number>,
): void {
  if (!outline.isWhole) {
    for (const { vertices } of outline.chains) {
      // Some may be no border at all: their corners have the height that the front has there.
      for (const vertex of vertices) standOnFront(draft, vertex, heightAt);
      for (let i = 1; i < vertices.length; i++)
        addEdge(edges, itemAt(vertices, i - 1), itemAt(vertices, i), EDGE.plain);
    }
    return;
  }
  for (const loop of new Set([...outline.withFloor, ...outline.withoutFloor])) {
    const count = strips.get(loop) ?? 0;
    if (count < 2) addRing(edges, loop.vertices, count === 1 ? EDGE.plain | EDGE.strip : EDGE.plain);
  }
}

function standOnFront(draft: MeshDraft, vertex: number, heightAt: GroundRules['heightAt']): void {
  const { x, y } = placeOn(draft.lattice, { x: itemAt(draft.xs, vertex), y: itemAt(draft.ys, vertex) });
  draft.zs[vertex] = heightAt(x, y);
}

/** In squared steps: exact. */
function areaOf(draft: MeshDraft, loops: readonly (readonly number[])[]): number {
  let double = 0;
  for (const loop of loops) {
    const origin = itemAt(loop, 0);
    for (let i = 1; i + 1 < loop.length; i++)
      double += doubleArea(draft, origin, itemAt(loop, i), itemAt(loop, i + 1));
  }
  return double / 2;
}

/** Whether all triangles, none of which is turned over, come to what the rim encloses as it was cut where contours meet it. */
function isTiled(draft: MeshDraft, { rim }: Ground): boolean {
  const { corners, triangleCount } = draft;
  let face = 0;
  for (let i = 0; i < 3 * triangleCount; i += 3)
    face += doubleArea(draft, corners[i] as number, corners[i + 1] as number, corners[i + 2] as number);
  const origin = itemAt(rim, 0);
  let within = 0;
  for (let i = 0; i < rim.length; i += 2)
    within += doubleArea(draft, origin, itemAt(rim, i), itemAt(rim, i + 1));
  return Math.abs(face - within) <= SAME_WHOLE_SUM * within;
}

function mergeCorners(
  { corners, triangleCount }: MeshDraft,
  sameAs: ReadonlyMap<number, number> | undefined,
): void {
  if (sameAs === undefined || sameAs.size === 0) return;
  for (let i = 0; i < 3 * triangleCount; i++) {
    const other = sameAs.get(itemAt(corners, i));
    if (other !== undefined) corners[i] = other;
  }
}

/** Sides down from the rim, and the back: the same rim filled, and turned to be seen from below. */
function closeBelow(draft: MeshDraft, rim: readonly number[], bottom: number): void {
  const below = new Map<number, number>();
  const under = (top: number): number => {
    const known = below.get(top);
    if (known !== undefined) return known;
    const made = addCorner(draft, itemAt(draft.xs, top), itemAt(draft.ys, top), bottom);
    below.set(top, made);
    return made;
  };
  const edges: GroundEdges = { starts: [], ends: [], kinds: [] };
  for (let i = 0; i < rim.length; i += 2) {
    const start = itemAt(rim, i);
    const end = itemAt(rim, i + 1);
    addTriangle(draft, [end, start, under(start)], 0);
    addTriangle(draft, [end, under(start), under(end)], 0);
    addEdge(edges, under(start), under(end), EDGE.rim);
  }
  const before = draft.triangleCount;
  addGround(draft, edges, {
    heightAt: () => bottom,
    isFlat: () => true,
    tolerance: 0,
    stageOf: () => 0,
  });
  for (let i = 3 * before; i < 3 * draft.triangleCount; i += 3) {
    const second = itemAt(draft.corners, i + 1);
    draft.corners[i + 1] = itemAt(draft.corners, i + 2);
    draft.corners[i + 2] = second;
  }
}

/** Corners that no triangle uses are left out. */
function finished(draft: MeshDraft, faceCount: number, sheetArea: number): ReliefMesh {
  const { xs, ys, zs, corners, stages, vertexCount, triangleCount, lattice } = draft;
  const indices = corners.slice(0, 3 * triangleCount);
  const numberOf = new Int32Array(vertexCount).fill(-1);
  let count = 0;
  for (let i = 0; i < indices.length; i++) {
    const vertex = indices[i] as number;
    if (numberOf[vertex] === -1) numberOf[vertex] = count++;
    indices[i] = numberOf[vertex] as number;
  }
  const positions = new Float32Array(3 * count);
  for (let vertex = 0; vertex < vertexCount; vertex++) {
    const at = 3 * (numberOf[vertex] as number);
    if (at < 0) continue;
    positions[at] = (xs[vertex] as number) * lattice.step;
    positions[at + 1] = (ys[vertex] as number) * lattice.step;
    positions[at + 2] = zs[vertex] as number;
  }
  return {
    origin: lattice.origin,
    positions,
    indices,
    stageOfTriangle: stages.slice(0, triangleCount),
    faceCount,
    sheetArea,
  };
}
