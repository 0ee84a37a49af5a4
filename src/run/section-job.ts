/** The etched part cut along a straight line at a minute: the front, what each stage took, and what was asked. */

import { readAlong, type SectionPoint, sectionAlong } from '#front/section/section-along.ts';
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { AskedStretch } from '#handoff/named-section.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { Taper } from '#job/taper.ts';
import { taperEndsAlong } from '#job/tapered-at.ts';
import { depthAskedAt, type EtchedPart, thicknessLeft } from './etched-part.ts';

export interface SectionRequest {
  /** Both in mm in the drawing's frame, and apart. */
  readonly from: Point;
  readonly to: Point;
  /** Immersed; the end of the run when not given. */
  readonly minute?: number | undefined;
  /** Evenly spaced places instead of those that the front needs. */
  readonly samples?: number | undefined;
  /** mm by which straight lines between places may leave the front. */
  readonly tolerance?: number | undefined;
}

export interface Section {
  /** By distance. Where what is asked jumps, or metal ends, two stand at the same distance: the side before and the side ahead. */
  readonly points: readonly SectionPoint[];
  readonly asked: readonly AskedStretch[];
  /** False when the whole cut lies beside the sheet. */
  readonly meetsMetal: boolean;
}

export function sectionOf(part: EtchedPart, request: SectionRequest): Section {
  return part.far === undefined ? sectionOfFace(part, request) : sectionOfBoth(part, part.far, request);
}

/** Where either face has a place, both are read; and where the metal between them ends (M9.5). */
function sectionOfBoth(part: EtchedPart, far: EtchedPart, request: SectionRequest): Section {
  if (request.samples !== undefined) return withFar(part, far, request, sectionOfFace(part, request));
  const length = lengthOf(request);
  const inner = sectionOfFace(far, request)
    .points.map(({ distance }) => distance)
    .filter((at) => at > 0 && at < length);
  const near = sectionOfFace(part, { ...request, breaks: inner });
  const ends = endsOfMetal(part, far, request, near.points);
  return withFar(part, far, request, sectionOfFace(part, { ...request, breaks: [...inner, ...ends] }));
}

function withFar(part: EtchedPart, far: EtchedPart, request: SectionRequest, section: Section): Section {
  const read = readAlong(far.index(), request.minute);
  const points = section.points.flatMap((point, index): SectionPoint[] => {
    if (point.target === undefined) return [point];
    const { depth, stage, bands } = read(point);
    const thickness = thicknessLeft(part, { near: point.depth, far: depth }, point);
    const sheet = sheetAt(part.thickness, point);
    return targetsAt(far, request, section.points, index).map((target) => ({
      ...point,
      thickness,
      far: { depth, stage, bands, target, sheet },
    }));
  });
  return { ...section, points };
}

/**
 * What is asked of the far face at a place: where that jumps, and the near face has one place, before it and ahead of it. Where what is asked
 * of the near one jumps two places stand at one distance already: the far face is asked on either side as the near one is.
 */
function targetsAt(
  far: EtchedPart,
  request: SectionRequest,
  points: Section['points'],
  index: number,
): (number | undefined)[] {
  const { distance } = itemAt(points, index);
  const [isFirst, isLast] = [index - 1, index + 1].map((other) => {
    const there = points[other]?.distance;
    return there === undefined || Math.abs(there - distance) > 2 * ROUNDING;
  });
  const beside = (by: number) => askedBeside(far, request, distance + by);
  if (isFirst !== true) return [beside(ROUNDING)];
  if (isLast !== true) return [beside(-ROUNDING)];
  const [before, ahead] = [beside(-ROUNDING), beside(ROUNDING)];
  const jumps = before !== undefined && ahead !== undefined && Math.abs(before - ahead) > 4 * ROUNDING;
  return jumps && request.samples === undefined ? [before, ahead] : [ahead];
}

/** Distances at which both fronts just meet, to a nanometre: the tip of a cusp. */
function endsOfMetal(
  part: EtchedPart,
  far: EtchedPart,
  request: SectionRequest,
  points: readonly SectionPoint[],
): number[] {
  const place = placeOn(request);
  const readNear = readAlong(part.index(), request.minute);
  const readFar = readAlong(far.index(), request.minute);
  const leftAt = (distance: number): number => {
    const at = place(distance);
    return sheetAt(part.thickness, at) - readNear(at).depth - readFar(at).depth;
  };
  return points.slice(1).flatMap((next, index) => {
    const before = itemAt(points, index);
    if (before.target === undefined || next.target === undefined) return [];
    let [from, to] = [before.distance, next.distance];
    const isLeft = leftAt(from) > 0;
    if (to - from < ROUNDING || leftAt(to) > 0 === isLeft) return [];
    while (to - from > ROUNDING) {
      const middle = (from + to) / 2;
      if (leftAt(middle) > 0 === isLeft) from = middle;
      else to = middle;
    }
    return [from, to];
  });
}

function askedBeside(far: EtchedPart, request: SectionRequest, distance: number): number | undefined {
  const at = placeOn(request)(Math.min(lengthOf(request) - ROUNDING, Math.max(ROUNDING, distance)));
  return depthAskedAt(far, far.regions().at(at), at);
}

interface FaceRequest extends SectionRequest {
  /** Distances at which a place is wanted. */
  readonly breaks?: readonly number[];
}

function sectionOfFace(part: EtchedPart, request: FaceRequest): Section {
  const asked = stretchesOf(part, request);
  const points =
    request.samples === undefined ? wherePlacesAreNeeded(part, request, asked) : evenly(part, request, asked);
  return { points, asked, meetsMetal: asked.some(({ depth }) => depth !== undefined) };
}

/** From one border or end of a taper to the next. */
function stretchesOf(part: EtchedPart, { from, to }: SectionRequest): AskedStretch[] {
  const place = placeOn({ from, to });
  return part
    .regions()
    .along(from, to)
    .flatMap(({ start, end, area }) => {
      const tapers = [...(part.plan.regions[area]?.taper?.tapers ?? []), ...sheetTapers(part)];
      const ends = taperEndsAlong(tapers, from, to).filter(
        (at) => at > start + ROUNDING && at < end - ROUNDING,
      );
      const stops = [start, ...ends.sort((a, b) => a - b), end];
      return stops.slice(1).map((stop, index): AskedStretch => {
        const begin = itemAt(stops, index);
        const first = depthAskedAt(part, area, place(begin));
        const last = depthAskedAt(part, area, place(stop));
        const depth = first === undefined || last === undefined ? undefined : { start: first, end: last };
        return { start: begin, end: stop, depth };
      });
    });
}

function sheetTapers({ thickness }: EtchedPart): readonly Taper[] {
  return typeof thickness === 'number' ? [] : [thickness];
}

function wherePlacesAreNeeded(
  part: EtchedPart,
  request: FaceRequest,
  asked: readonly AskedStretch[],
): SectionPoint[] {
  const place = placeOn(request);
  const points: SectionPoint[] = [];
  for (let first = 0; first < asked.length; ) {
    const { start, depth } = itemAt(asked, first);
    let next = first + 1;
    if (depth === undefined)
      points.push(nothingAt(part, place, start), nothingAt(part, place, itemAt(asked, first).end));
    else {
      while (next < asked.length && itemAt(asked, next).depth !== undefined) next++;
      for (const point of metalRun(part, request, asked.slice(first, next))) points.push(point);
    }
    first = next;
  }
  return points;
}

/** Along stretches of metal that join: read from inside, each border given from both sides. */
function metalRun(
  part: EtchedPart,
  request: FaceRequest,
  stretches: readonly AskedStretch[],
): SectionPoint[] {
  const place = placeOn(request);
  const [start, end] = [itemAt(stretches, 0).start, itemAt(stretches, stretches.length - 1).end];
  const inset = Math.min(ROUNDING, (end - start) / 4);
  const run = sectionAlong(part.index(), place(start + inset), place(end - inset), {
    minute: request.minute,
    tolerance: request.tolerance,
    targetBreaks: [...stretches.slice(1).map((each) => each.start), ...(request.breaks ?? [])].map(
      (at) => at - start - inset,
    ),
  });
  const points: SectionPoint[] = [];
  let at = 0;
  run.forEach((point, i) => {
    const distance = i === 0 ? start : i === run.length - 1 ? end : point.distance + start + inset;
    const spot = place(distance);
    const thickness = thicknessLeft(part, { near: point.depth }, spot);
    const report = () => {
      points.push({
        ...point,
        distance,
        ...spot,
        thickness,
        target: askedAlong(itemAt(stretches, at), distance),
      });
    };
    report();
    while (at + 1 < stretches.length && itemAt(stretches, at).end <= distance + ROUNDING) {
      at++;
      report();
    }
  });
  return points;
}

function nothingAt({ plan }: EtchedPart, place: (distance: number) => Point, distance: number): SectionPoint {
  const bands = plan.stages.map(() => 0);
  return { distance, ...place(distance), depth: 0, stage: 0, bands, thickness: 0, target: undefined };
}

/** As many places as were asked for; at a border the target is the one ahead. */
function evenly(part: EtchedPart, request: SectionRequest, asked: readonly AskedStretch[]): SectionPoint[] {
  const place = placeOn(request);
  const length = lengthOf(request);
  const run = sectionAlong(part.index(), place(ROUNDING), place(length - ROUNDING), {
    minute: request.minute,
    samples: request.samples,
  });
  let at = 0;
  return run.map((point, i) => {
    const distance = (length * i) / (run.length - 1);
    while (at + 1 < asked.length && itemAt(asked, at).end <= distance) at++;
    const here = asked[at];
    const target = here === undefined ? undefined : askedAlong(here, distance);
    const spot = place(distance);
    const thickness = target === undefined ? 0 : thicknessLeft(part, { near: point.depth }, spot);
    return { ...point, distance, ...spot, thickness, target };
  });
}

function askedAlong({ start, end, depth }: AskedStretch, distance: number): number | undefined {
  if (depth === undefined || depth.start === depth.end) return depth?.start;
  return depth.start + ((depth.end - depth.start) * (distance - start)) / (end - start);
}

function placeOn({ from, to }: SectionRequest): (distance: number) => Point {
  const length = lengthOf({ from, to });
  return (distance) => ({
    x: from.x + ((to.x - from.x) * distance) / length,
    y: from.y + ((to.y - from.y) * distance) / length,
  });
}

function lengthOf({ from, to }: Pick<SectionRequest, 'from' | 'to'>): number {
  return distance(from, to);
}
