/**
 * The etched part as a watertight solid, built from exact contours and from no grid: land, walls as bands between
 * contours, flat floors, the sheet's sides and back. Every edge belongs to exactly two triangles, since neighbouring
 * patches are bounded by the same vertices. Size goes with tolerance, not with the part: floors are a few triangles.
 *
 * Where the front is deeper than the sheet is thick the floor is held just above the back, so that the solid stays one.
 */
import { itemAt } from '#geometry/assert.ts';
import { type ContourKit, clipNearCluster, makeClipBorder } from './contour-kit.ts';
import {
  type Chain,
  type Outline,
  type Ring,
  reverseChain,
  reverseRing,
  ringsOf,
} from './contour-outline.ts';
import { makeProbe } from './depth-at.ts';
import { endlessSheet } from './endless-sheet.ts';
import { fillPatch, type PatchRules } from './fill-patch.ts';
import { momentAt } from './front.ts';
import { addTriangle, addVertex, emptyDraft, type MeshDraft } from './mesh-draft.ts';
import { rimOf, type SheetRim } from './sheet-rim.ts';
import { type ContourStack, stackContours } from './stack-contours.ts';

export interface ReliefMesh {
  /** x, y, z by vertex; z up, 0 at the as-received surface. */
  readonly positions: Float32Array;
  /** Three by triangle, counter-clockwise seen from outside. */
  readonly indices: Uint32Array;
  /** Number of the stage that stands deepest there; 0 for untouched metal, sides and back. */
  readonly stageOfTriangle: Uint8Array;
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

interface Workshop {
  readonly draft: MeshDraft;
  readonly kit: ContourKit;
  readonly walls: PatchRules;
  readonly flats: (stage: number) => PatchRules;
  /** Borders of the floors by stage index, gathered from all clusters: one floor may run around several. */
  readonly floors: readonly Chain[][];
}

export function reliefMesh(
  kit: ContourKit,
  { minute, tolerance = DEFAULT_TOLERANCE }: ReliefAsk = {},
): ReliefMesh {
  const { index } = kit;
  const { front } = index;
  const draft = emptyDraft();
  const moment = momentAt(front, minute);
  const shop = workshop(draft, kit, minute);
  const loops = front.sheet.length > 0 ? front.sheet : endlessSheet(index);
  const sheet = makeClipBorder(index, loops);
  // Chords in plan and in profile may err the same way, and their errors add up.
  const sag = tolerance / 2;
  const heightOf = (depth: number): number => Math.max(-depth, SKIN - front.thickness);
  const rules = { moment, sag, heightOf };
  const land: Ring[] = [];
  const atRim: { cluster: Int32Array; stack: ContourStack }[] = [];
  for (const cluster of kit.clusters) {
    const clip = clipNearCluster(sheet, cluster);
    const stack = stackContours(draft, kit, cluster, clip, rules);
    if (clip !== undefined) atRim.push({ cluster, stack });
    else land.push(...fillStack(shop, stack));
  }
  const rim = rimOf(draft, kit, { loops, sheet, stacks: atRim, moment, sag, heightOf });
  const landChains = [...rim.land];
  atRim.forEach(({ stack }, i) => {
    landChains.push(...itemAt(stack.outlines, 0).withFloor.map(reverseChain));
    fillRimStack(shop, stack, itemAt(rim.stacks, i));
  });
  land.push(...ringsOf(draft, landChains));
  fillPatch(draft, land, shop.flats(0));
  shop.floors.forEach((chains, stage) => {
    fillPatch(draft, ringsOf(draft, chains), shop.flats(itemAt(shop.walls.numbers, stage)));
  });
  closeBelow(shop, rim, -front.thickness);
  return finished(draft);
}

function workshop(draft: MeshDraft, kit: ContourKit, minute: number | undefined): Workshop {
  const numbers = kit.index.front.stages.map(({ number }) => number);
  const probe = makeProbe(kit.index, momentAt(kit.index.front, minute));
  const middle = (values: Float64Array, a: number, b: number, c: number): number =>
    (itemAt(values, a) + itemAt(values, b) + itemAt(values, c)) / 3;
  const stageOf = (a: number, b: number, c: number): number => {
    probe.measure(middle(draft.xs, a, b, c), middle(draft.ys, a, b, c));
    return probe.stage();
  };
  return {
    draft,
    kit,
    walls: { isFlat: false, stageOf, numbers },
    flats: (stage) => ({ isFlat: true, stageOf: () => stage, numbers }),
    floors: numbers.map(() => []),
  };
}

/** Fills a cluster's walls and gathers its floors; returns the rings that it leaves in the land, as holes. */
function fillStack(shop: Workshop, { outlines, floors }: ContourStack): Ring[] {
  const { draft } = shop;
  const surface = ringsOf(draft, itemAt(outlines, 0).withFloor);
  let above = surface;
  for (let i = 1; i < outlines.length; i++) {
    const outline = itemAt(outlines, i);
    const below = ringsOf(draft, outline.withFloor);
    fillPatch(draft, [...above, ...below.map(reverseRing)], shop.walls);
    above = below;
    if (outline.withFloor === outline.withoutFloor) continue;
    itemAt(shop.floors, itemAt(floors, i)).push(...floorChains(outline));
    above = ringsOf(draft, outline.withoutFloor);
  }
  return surface.map(reverseRing);
}

/** Border of a floor: where the contour with it and the contour without it part. */
function floorChains({ withFloor, withoutFloor }: Outline): Chain[] {
  const inner = new Set(withoutFloor);
  const outer = new Set(withFloor);
  return [
    ...withFloor.filter((chain) => !inner.has(chain)),
    ...withoutFloor.filter((chain) => !outer.has(chain)).map(reverseChain),
  ];
}

/** The same for a cluster that runs off the sheet: the sheet's rim closes its bands and floors. */
function fillRimStack(
  shop: Workshop,
  { outlines, floors }: ContourStack,
  rim: SheetRim['stacks'][number],
): void {
  const { draft } = shop;
  for (let i = 1; i < outlines.length; i++) {
    const above = itemAt(outlines, i - 1);
    const outline = itemAt(outlines, i);
    const band = [...above.withoutFloor, ...outline.withFloor.map(reverseChain), ...itemAt(rim.bands, i - 1)];
    fillPatch(draft, ringsOf(draft, band), shop.walls);
    const stage = itemAt(floors, i);
    if (stage >= 0) itemAt(shop.floors, stage).push(...floorChains(outline), ...itemAt(rim.floors, i));
  }
}

/** Sides down from the sheet's rim, and the back. */
function closeBelow({ draft, flats }: Workshop, rim: SheetRim, bottom: number): void {
  const back: Ring[] = rim.loops.map((loop) => {
    const below = loop.map((top) => addVertex(draft, itemAt(draft.xs, top), itemAt(draft.ys, top), bottom));
    loop.forEach((top, i) => {
      const next = (i + 1) % loop.length;
      addTriangle(draft, itemAt(loop, next), top, itemAt(below, i), 0);
      addTriangle(draft, itemAt(loop, next), itemAt(below, i), itemAt(below, next), 0);
    });
    return { vertices: below, stages: below.map(() => -1) };
  });
  const before = draft.triangleCount;
  fillPatch(draft, back, flats(0));
  // The patch was filled as seen from above; the back is seen from below.
  for (let i = 3 * before; i < 3 * draft.triangleCount; i += 3) {
    const second = itemAt(draft.corners, i + 1);
    draft.corners[i + 1] = itemAt(draft.corners, i + 2);
    draft.corners[i + 2] = second;
  }
}

function finished({ xs, ys, zs, corners, stages, vertexCount, triangleCount }: MeshDraft): ReliefMesh {
  const positions = new Float32Array(3 * vertexCount);
  for (let i = 0; i < vertexCount; i++) {
    positions[3 * i] = itemAt(xs, i);
    positions[3 * i + 1] = itemAt(ys, i);
    positions[3 * i + 2] = itemAt(zs, i);
  }
  return {
    positions,
    indices: corners.slice(0, 3 * triangleCount),
    stageOfTriangle: stages.slice(0, triangleCount),
  };
}
