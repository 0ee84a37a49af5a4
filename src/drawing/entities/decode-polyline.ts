/**
 * LINE, LWPOLYLINE and the older POLYLINE with its VERTEX entities. Vertices are found by their x, whatever a stated count says; the
 * bulge belongs to the vertex it stands with. Fitted polylines give their fitted vertices, not the frame they came from.
 */

import { MIRROR_X } from '#drawing/curves/affine.ts';
import { type CurvePrimitive, mapPrimitive } from '#drawing/curves/curve-primitive.ts';
import { codeAt, opens } from '#drawing/read/tag-table.ts';
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { FLAT, SHORTEST_SPAN, SILENT_JOIN } from '#geometry/tolerances.ts';
import type { Decoded } from './decoded.ts';
import {
  arePairsWhole,
  type EntityTags,
  flagsAt,
  flagsOf,
  numberOf,
  pointOf,
  report,
  scaled,
  strictNumber,
} from './entity-tags.ts';
import { facingOf } from './extrusion.ts';

interface Vertex extends Point {
  readonly bulge: number;
}

const CLOSED = 1;

export function decodeLine(entity: EntityTags): Decoded {
  const start = pointOf(entity, 10);
  const end = pointOf(entity, 11);
  if (start === undefined || end === undefined) {
    report(entity, 'entity-incomplete', { lacks: start === undefined ? 'its start' : 'its end' });
    return undefined;
  }
  const rise = Math.abs((numberOf(entity, 31) ?? 0) - (numberOf(entity, 30) ?? 0)) * entity.millimetres;
  if (distance(start, end) * entity.millimetres < SHORTEST_SPAN) {
    const what = rise > FLAT ? 'no length seen from above' : 'no length';
    report(entity, 'entity-without-size', { what }, scaled(entity, start));
    return undefined;
  }
  if (rise > FLAT) report(entity, 'entity-not-flat', { rise }, scaled(entity, start));
  return { what: 'curve', primitives: [{ kind: 'line', start, end }] };
}

export function decodeLightPolyline(entity: EntityTags): Decoded {
  const { tags } = entity;
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let stated: number | undefined;
  let flags = 0;
  let constant: number | undefined;
  const widths: number[] = [];
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(tags, at);
    const vertex = vertices[vertices.length - 1];
    if (code === 10) vertices.push({ x: strictNumber(entity, at), y: 0, bulge: 0 });
    else if (code === 20 && vertex !== undefined) vertex.y = strictNumber(entity, at);
    else if (code === 42 && vertex !== undefined) vertex.bulge = strictNumber(entity, at);
    else if (code === 40 || code === 41) widths.push(strictNumber(entity, at));
    else if (code === 43) constant = strictNumber(entity, at);
    else if (code === 70) flags = flagsAt(entity, at);
    else if (code === 90) stated = strictNumber(entity, at);
  }
  if (!arePairsWhole(entity, 10)) {
    report(entity, 'entity-incomplete', { lacks: 'x or y of a vertex' });
    return undefined;
  }
  if (stated !== undefined && stated !== vertices.length) {
    report(entity, 'polyline-count-differs', { stated, found: vertices.length });
  }
  const facing = facingOf(entity);
  return (
    facing &&
    polylineOf(entity, vertices, {
      closed: (flags & CLOSED) !== 0,
      mirrored: facing === 'down',
      // Widths of single vertices win over one for all (DXF reference, LWPOLYLINE, group 43).
      widths: widths.some((width) => width > 0) ? widths : [constant ?? 0],
    })
  );
}

const SPACE_POLYLINE = 8;
const MESH = 16 | 64;
const SPLINE_FRAME = 16;

export function decodeOldPolyline(entity: EntityTags): Decoded {
  const flags = flagsOf(entity, 70);
  if ((flags & MESH) !== 0) {
    return { what: 'passed', why: 'it is a mesh in space, not an outline', mayMatter: true };
  }
  const inSpace = (flags & SPACE_POLYLINE) !== 0;
  const { vertices, widths, lowest, highest, complete } = readVertices(entity, inSpace);
  if (!complete) return undefined;
  if (!isEnded(entity)) report(entity, 'polyline-end-missing', { vertices: vertices.length });
  const rise = (highest - lowest) * entity.millimetres;
  if (inSpace && rise > FLAT) report(entity, 'entity-not-flat', { rise });
  const facing = inSpace ? 'up' : facingOf(entity);
  return (
    facing &&
    polylineOf(entity, vertices, {
      closed: (flags & CLOSED) !== 0,
      mirrored: facing === 'down',
      widths,
    })
  );
}

function readVertices(
  entity: EntityTags,
  inSpace: boolean,
): { vertices: Vertex[]; widths: number[]; lowest: number; highest: number; complete: boolean } {
  const { tags } = entity;
  const vertices: Vertex[] = [];
  const usual = usualWidths(entity);
  const widths: number[] = [];
  let lowest = 0;
  let highest = 0;
  for (let at = entity.headEnd; at < entity.end && opens(tags, at, 'VERTEX'); ) {
    const groups = new Map<number, number>();
    // Two places in one vertex: the head of the second one was damaged.
    let isTorn = false;
    for (at++; at < entity.end && codeAt(tags, at) !== 0; at++) {
      const code = codeAt(tags, at);
      isTorn ||= groups.has(code) && (code === 10 || code === 20);
      if (VERTEX_CODES.has(code)) groups.set(code, strictNumber(entity, at));
    }
    if (((groups.get(70) ?? 0) & SPLINE_FRAME) !== 0) continue;
    const x = groups.get(10);
    const y = groups.get(20);
    if (x === undefined || y === undefined || isTorn) {
      report(entity, 'entity-incomplete', { lacks: 'the place of a vertex' });
      return { vertices, widths, lowest, highest, complete: false };
    }
    const z = groups.get(30) ?? 0;
    lowest = vertices.length === 0 ? z : Math.min(lowest, z);
    highest = vertices.length === 0 ? z : Math.max(highest, z);
    widths.push(...widthsOf(groups, usual));
    vertices.push({ x, y, bulge: inSpace ? 0 : (groups.get(42) ?? 0) });
  }
  return { vertices, widths, lowest, highest, complete: true };
}

/** At the start and the end of spans whose vertices give none. */
function usualWidths(entity: EntityTags): readonly [number, number] {
  return [numberOf(entity, 40) ?? 0, numberOf(entity, 41) ?? 0];
}

function widthsOf(groups: ReadonlyMap<number, number>, usual: readonly [number, number]): number[] {
  return [groups.get(40) ?? usual[0], groups.get(41) ?? usual[1]];
}

const VERTEX_CODES: ReadonlySet<number> = new Set([10, 20, 30, 40, 41, 42, 70]);

function isEnded(entity: EntityTags): boolean {
  for (let at = entity.end - 1; at >= entity.headEnd; at--) {
    if (codeAt(entity.tags, at) === 0) return opens(entity.tags, at, 'SEQEND');
  }
  return false;
}

function polylineOf(
  entity: EntityTags,
  vertices: readonly Vertex[],
  { closed, mirrored, widths }: { closed: boolean; mirrored: boolean; widths: readonly number[] },
): Decoded {
  if (vertices.length < 2) {
    const what = vertices.length === 0 ? 'no vertices' : 'one vertex only';
    const [first] = vertices;
    report(entity, 'entity-without-size', { what }, first && scaled(entity, first));
    return undefined;
  }
  const primitives = primitivesBetween(entity, vertices, closed);
  if (primitives.length === 0) {
    report(
      entity,
      'entity-without-size',
      { what: 'all vertices in one place' },
      scaled(entity, itemAt(vertices, 0)),
    );
    return undefined;
  }
  const most = widths.reduce((least, width) => Math.max(least, width), 0);
  const least = widths.reduce((so, width) => Math.min(so, width), most);
  return {
    what: 'curve',
    primitives: mirrored ? primitives.map((primitive) => mapPrimitive(MIRROR_X, primitive)) : primitives,
    ...(most * entity.millimetres > FLAT ? { widths: { least, most } } : {}),
  };
}

/** From vertex to vertex; a last vertex on the first closes the polyline and is dropped, flag or no flag. */
function primitivesBetween(
  entity: EntityTags,
  vertices: readonly Vertex[],
  flagged: boolean,
): CurvePrimitive[] {
  const count = vertices.length;
  const first = itemAt(vertices, 0);
  const last = itemAt(vertices, count - 1);
  const repeated = count > 2 && distance(first, last) * entity.millimetres <= SILENT_JOIN;
  if (repeated && flagged && last.bulge !== 0) reportPointArc(entity, last);
  const points = repeated ? vertices.slice(0, -1) : vertices;
  const closed = flagged || repeated;
  const primitives: CurvePrimitive[] = [];
  let start: Point = first;
  for (let n = 0; n < (closed ? points.length : points.length - 1); n++) {
    const { bulge } = itemAt(points, n);
    const end = itemAt(points, (n + 1) % points.length);
    if (distance(start, end) * entity.millimetres < SHORTEST_SPAN) {
      if (bulge !== 0) reportPointArc(entity, end);
      continue;
    }
    primitives.push(bulge === 0 ? { kind: 'line', start, end } : { kind: 'bulge', start, end, bulge });
    start = end;
  }
  return primitives;
}

function reportPointArc(entity: EntityTags, at: Point): void {
  report(
    entity,
    'entity-without-size',
    { what: 'an arc between two vertices in one place' },
    scaled(entity, at),
  );
}
