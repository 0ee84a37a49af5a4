/**
 * The sheet's rim as mesh vertices: the upper edge of its sides, which dips where openings run off the sheet. Contours that
 * end on it put their vertices in; between two of them the rim belongs to one band, one floor, or the land.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { type ArcSpan, type Loop, type Span, startAngle } from '#geometry/span.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { type Chain, turnsBetween } from './contour-outline.ts';
import type { Moment } from './front.ts';
import { type Feature, squaredDistance } from './front-features.ts';
import { addVertex, type MeshDraft } from './mesh-draft.ts';
import type { ContourStack } from './stack-contours.ts';

export interface SheetRim {
  /** Vertices of each sheet loop, in its direction. */
  readonly loops: readonly (readonly number[])[];
  /** Rim edges along untouched land. */
  readonly land: readonly Chain[];
  /** By stack: rim edges of each band (by the outline above it) and of each floor (by its outline). */
  readonly stacks: readonly { readonly bands: readonly Chain[][]; readonly floors: readonly Chain[][] }[];
}

interface RimAsk {
  readonly loops: readonly Loop[];
  readonly sheet: ClipBorder;
  readonly stacks: readonly { readonly cluster: Int32Array; readonly stack: ContourStack }[];
  readonly moment: Moment;
  readonly sag: number;
  readonly heightOf: (depth: number) => number;
}

/** mm; rim vertices nearer than this are one. */
const JOIN = 5e-5;
/** mm; a rim edge whose middle is this near to a floor's depth lies on the floor. */
const ON_FLOOR = 1e-7;

export function rimOf(draft: MeshDraft, kit: ContourKit, ask: RimAsk): SheetRim {
  const landings = landingsByBorder(draft, ask);
  const land: Chain[] = [];
  const stacks = ask.stacks.map(({ stack }) => ({
    bands: stack.outlines.map((): Chain[] => []),
    floors: stack.outlines.map((): Chain[] => []),
  }));
  const stackOfMember = new Map<number, number>();
  ask.stacks.forEach(({ cluster }, s) => {
    for (const member of cluster) stackOfMember.set(member, s);
  });
  let border = 0;
  const loops = ask.loops.map((loop) => {
    const first = border;
    border += loop.length;
    const vertices = loopVertices(draft, kit, ask, loop, first, landings);
    vertices.forEach(({ vertex, border: on }, i) => {
      const next = itemAt(vertices, (i + 1) % vertices.length).vertex;
      const chain = { vertices: [vertex, next], stage: -1 };
      const here = rimDepth(kit, ask, on, middleOf(draft, itemAt(ask.sheet.features, on), vertex, next));
      const stack = here.member < 0 ? undefined : stackOfMember.get(here.member);
      if (here.depth <= 0 || stack === undefined) land.push(chain);
      else place(itemAt(ask.stacks, stack).stack, itemAt(stacks, stack), here.depth, chain);
    });
    return vertices.map(({ vertex }) => vertex);
  });
  return { loops, land, stacks };
}

function place(
  { outlines, floors }: ContourStack,
  into: { readonly bands: readonly Chain[][]; readonly floors: readonly Chain[][] },
  depth: number,
  chain: Chain,
): void {
  const at = outlines.findIndex(
    (outline, i) => itemAt(floors, i) >= 0 && Math.abs(outline.depth - depth) <= ON_FLOOR,
  );
  if (at >= 0) itemAt(into.floors, at).push(chain);
  else {
    const below = outlines.findIndex((outline) => outline.depth > depth);
    itemAt(into.bands, (below < 0 ? outlines.length : below) - 1).push(chain);
  }
}

interface Landing {
  readonly vertex: number;
  readonly share: number;
}

/** Contour vertices on each border feature of the sheet. */
function landingsByBorder(draft: MeshDraft, { sheet, stacks }: RimAsk): Map<Feature, Landing[]> {
  const landings = new Map<Feature, Landing[]>();
  for (const { stack } of stacks) {
    for (const outline of stack.outlines) {
      for (const { vertex, border } of outline.landings) {
        const { feature } = border.spread;
        const share = shareOf(feature, itemAt(draft.xs, vertex), itemAt(draft.ys, vertex));
        const list = landings.get(feature);
        if (list === undefined) landings.set(feature, [{ vertex, share }]);
        else list.push({ vertex, share });
      }
    }
  }
  assert(
    [...landings.keys()].every((feature) => sheet.features.includes(feature)),
    'contours land on the sheet',
  );
  return landings;
}

function shareOf(feature: Feature, x: number, y: number): number {
  if (feature.kind === 'line') {
    return ((x - feature.ax) * -feature.ny + (y - feature.ay) * feature.nx) / feature.length;
  }
  const dx = x - feature.cx;
  const dy = y - feature.cy;
  const turned = atan2(feature.nx * dy - feature.ny * dx, feature.nx * dx + feature.ny * dy);
  return 0.5 + turned / feature.sweep;
}

interface RimVertex {
  readonly vertex: number;
  /** Border feature that the rim edge after it lies on. */
  readonly border: number;
}

function loopVertices(
  draft: MeshDraft,
  kit: ContourKit,
  ask: RimAsk,
  loop: Loop,
  firstBorder: number,
  landings: ReadonlyMap<Feature, readonly Landing[]>,
): RimVertex[] {
  const vertices: RimVertex[] = [];
  const add = (vertex: number, border: number): void => {
    const last = vertices[vertices.length - 1];
    if (last !== undefined && gap(draft, last.vertex, vertex) <= JOIN) {
      // A contour's vertex cannot be moved away from: it takes the place of the rim's own.
      vertices[vertices.length - 1] = { vertex: Math.min(last.vertex, vertex), border };
    } else vertices.push({ vertex, border });
  };
  loop.forEach((span, i) => {
    const border = firstBorder + i;
    const feature = itemAt(ask.sheet.features, border);
    const own = (share: number, x: number, y: number): Landing => {
      const { depth } = rimDepth(kit, ask, border, { x, y });
      return { vertex: addVertex(draft, x, y, ask.heightOf(depth)), share };
    };
    const along = [
      own(0, span.start.x, span.start.y),
      ...anglesOf(span, ask.sag).map(({ share, x, y }) => own(share, x, y)),
      ...(landings.get(feature) ?? []),
    ].sort((a, b) => a.share - b.share);
    for (const { vertex } of along) add(vertex, border);
  });
  const first = itemAt(vertices, 0);
  const last = itemAt(vertices, vertices.length - 1);
  if (vertices.length > 1 && gap(draft, first.vertex, last.vertex) <= JOIN) {
    vertices.pop();
    vertices[0] = { vertex: Math.min(first.vertex, last.vertex), border: first.border };
  }
  return vertices;
}

function anglesOf(span: Span, sag: number): { share: number; x: number; y: number }[] {
  if (span.kind === 'line') return [];
  const arc: ArcSpan = span;
  const first = startAngle(arc);
  return turnsBetween(first, first + arc.sweep, arc.radius, sag).map((angle) => ({
    share: (angle - first) / arc.sweep,
    x: arc.center.x + arc.radius * cos(angle),
    y: arc.center.y + arc.radius * sin(angle),
  }));
}

function gap({ xs, ys }: MeshDraft, a: number, b: number): number {
  return hypot(itemAt(xs, a) - itemAt(xs, b), itemAt(ys, a) - itemAt(ys, b));
}

/** The point of the rim itself, not of its chord, halfway between two of its vertices. */
function middleOf({ xs, ys }: MeshDraft, feature: Feature, a: number, b: number): { x: number; y: number } {
  const x = (itemAt(xs, a) + itemAt(xs, b)) / 2;
  const y = (itemAt(ys, a) + itemAt(ys, b)) / 2;
  if (feature.kind === 'line') return { x, y };
  const far = hypot(x - feature.cx, y - feature.cy);
  const stretch = feature.radius / far;
  return { x: feature.cx + (x - feature.cx) * stretch, y: feature.cy + (y - feature.cy) * stretch };
}

/** Depth on the rim, and the feature it comes from: openings never pass the rim, so that a feature is always the nearest. */
function rimDepth(
  { index }: ContourKit,
  { sheet, moment }: RimAsk,
  border: number,
  { x, y }: { x: number; y: number },
): { depth: number; member: number } {
  let deepest = 0;
  let member = -1;
  for (const candidate of itemAt(sheet.nearFeatures, border)) {
    const source = itemAt(index.features, candidate);
    if (source.kind === 'corner') continue;
    const cut = itemAt(moment.cuts, source.stage);
    const factor = itemAt(moment.factors, source.stage);
    const squared = cut * cut - squaredDistance(source, x, y) / (factor * factor);
    if (squared <= 0) continue;
    const depth = itemAt(moment.bases, source.stage) + Math.sqrt(squared);
    if (depth > deepest) {
      deepest = depth;
      member = candidate;
    }
  }
  return { depth: deepest, member };
}
