/**
 * Triangles for one patch of a mesh: an area of the plan between rings, outer counter-clockwise and holes clockwise, whose
 * vertices may stand at any height. Every ring edge becomes the edge of exactly one triangle, whatever the shape: that is
 * what makes the mesh watertight.
 */
import earcut from 'earcut';
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfPoints, EMPTY_BOX } from '#geometry/box.ts';
import type { Ring } from './contour-outline.ts';
import { flipToRound } from './flip-to-round.ts';
import { mendEdges } from './mend-edges.ts';
import { addTriangle, doubleArea, type MeshDraft } from './mesh-draft.ts';
import { zipRings } from './zip-rings.ts';

/** Stage number of a triangle, from its corners. */
type StageOfTriangle = (a: number, b: number, c: number) => number;

export interface PatchRules {
  /** Flat patches need no care for the shape of their triangles. */
  readonly isFlat: boolean;
  readonly stageOf: StageOfTriangle;
  /** Stage number by stage index, for strips between two rings. */
  readonly numbers: readonly number[];
}

export function fillPatch(draft: MeshDraft, rings: readonly Ring[], rules: PatchRules): void {
  const { numbers } = rules;
  for (const group of groupRings(draft, rings)) {
    const [outer, hole] = group;
    if (outer === undefined) continue;
    const isStrip = !rules.isFlat && hole !== undefined && group.length === 2;
    if (isStrip && zipRings(draft, outer, hole, { numbers, fold: 0 })) continue;
    const filling = fillByEars(draft, group, rules);
    // Rings nearer to each other than their chords to their arcs may cross: a strip that folds a little there is the least harm.
    if (isStrip && !filling.isPlain)
      zipRings(draft, outer, hole, { numbers, fold: Number.POSITIVE_INFINITY });
    else addFilling(draft, filling, rules);
  }
}

interface Group {
  readonly rings: Ring[];
  readonly area: number;
  readonly box: Box;
}

/** Each outer ring with its holes. */
function groupRings(draft: MeshDraft, rings: readonly Ring[]): Ring[][] {
  const groups: Group[] = [];
  const holes: Ring[] = [];
  for (const ring of rings) {
    const area = ringArea(draft, ring);
    if (area > 0) groups.push({ rings: [ring], area, box: boxOfRing(draft, ring) });
    else holes.push(ring);
  }
  if (groups.length > 1) groups.sort((a, b) => a.area - b.area);
  for (const hole of holes) {
    const owner = groups.length === 1 ? groups[0] : ownerOf(draft, groups, hole);
    // A hole of no width, or outside by rounding, still needs its edges in some triangle.
    if (owner !== undefined) owner.rings.push(hole);
    else groups.push({ rings: [hole], area: Number.POSITIVE_INFINITY, box: EMPTY_BOX });
  }
  return groups.map((group) => group.rings);
}

/** The smallest group whose outer ring holds the hole. */
function ownerOf(draft: MeshDraft, groups: readonly Group[], hole: Ring): Group | undefined {
  const box = boxOfRing(draft, hole);
  const x = (box.minX + box.maxX) / 2;
  const y = (box.minY + box.maxY) / 2;
  return groups.find((group) => {
    const { minX, minY, maxX, maxY } = group.box;
    if (x < minX || x > maxX || y < minY || y > maxY) return false;
    return holds(draft, itemAt(group.rings, 0), hole);
  });
}

function boxOfRing({ xs, ys }: MeshDraft, { vertices }: Ring): Box {
  return boxOfPoints(vertices.map((vertex) => ({ x: itemAt(xs, vertex), y: itemAt(ys, vertex) })));
}

function ringArea(draft: MeshDraft, { vertices }: Ring): number {
  const origin = itemAt(vertices, 0);
  let double = 0;
  for (let i = 1; i + 1 < vertices.length; i++) {
    double += doubleArea(draft, origin, itemAt(vertices, i), itemAt(vertices, i + 1));
  }
  return double / 2;
}

/** Whether most of a few points of the hole lie in the outer ring; single points may touch it. */
function holds(draft: MeshDraft, outer: Ring, hole: Ring): boolean {
  let inside = 0;
  let asked = 0;
  const step = Math.max(1, Math.floor(hole.vertices.length / 5));
  for (let i = 0; i < hole.vertices.length; i += step) {
    asked++;
    if (isIn(draft, outer, itemAt(hole.vertices, i))) inside++;
  }
  return inside * 2 > asked;
}

function isIn({ xs, ys }: MeshDraft, { vertices }: Ring, vertex: number): boolean {
  const x = itemAt(xs, vertex);
  const y = itemAt(ys, vertex);
  let inside = false;
  let before = itemAt(vertices, vertices.length - 1);
  for (const at of vertices) {
    const y0 = ys[before] as number;
    const y1 = ys[at] as number;
    if (y0 > y !== y1 > y) {
      const x0 = xs[before] as number;
      const x1 = xs[at] as number;
      if (x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
    }
    before = at;
  }
  return inside;
}

interface Filling {
  readonly vertices: readonly number[];
  /** Places in `vertices`, by three. */
  readonly triangles: readonly number[];
  /** Whether the triangles cover the ground once. */
  readonly isPlain: boolean;
}

function fillByEars(draft: MeshDraft, group: readonly Ring[], { isFlat }: PatchRules): Filling {
  const vertices = group.flatMap((ring) => ring.vertices);
  const origin = itemAt(vertices, 0);
  const flat = new Float64Array(2 * vertices.length);
  vertices.forEach((vertex, i) => {
    flat[2 * i] = itemAt(draft.xs, vertex) - itemAt(draft.xs, origin);
    flat[2 * i + 1] = itemAt(draft.ys, vertex) - itemAt(draft.ys, origin);
  });
  const ringStarts: number[] = [];
  let start = 0;
  for (const ring of group) {
    ringStarts.push(start);
    start += ring.vertices.length;
  }
  const triangles = mendEdges(flat, ringStarts, earcut(flat, ringStarts.slice(1)));
  let covered = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const corner = (k: number): number => itemAt(vertices, itemAt(triangles, i + k));
    covered += Math.abs(doubleArea(draft, corner(0), corner(1), corner(2))) / 2;
  }
  const ground = group.reduce((sum, ring) => sum + ringArea(draft, ring), 0);
  const isPlain = Math.abs(covered - ground) <= 1e-9 * Math.abs(ground) + 1e-9;
  if (!isFlat && isPlain) flipToRound(flat, triangles);
  return { vertices, triangles, isPlain };
}

function addFilling(draft: MeshDraft, { vertices, triangles }: Filling, rules: PatchRules): void {
  for (let i = 0; i < triangles.length; i += 3) {
    const a = itemAt(vertices, itemAt(triangles, i));
    const b = itemAt(vertices, itemAt(triangles, i + 1));
    const c = itemAt(vertices, itemAt(triangles, i + 2));
    addTriangle(draft, a, b, c, rules.stageOf(a, b, c));
  }
}
