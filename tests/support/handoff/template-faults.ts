/**
 * What a template set promises, checked on what came out: slots and bridges are the scribe lines, no slot is too long, bridges are
 * clear of corners, webs hold, and each sheet stays in one piece. Sheets and webs are judged by JSTS.
 */
import { itemAt } from '#geometry/assert.ts';
import { distance, dot, type Point } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Path,
  type Span,
  spanLength,
  spansLength,
  tangentAlong,
} from '#geometry/span.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { slotOutline } from '#handoff/template/slot-outline.ts';
import type { LaidLine, Slot, TemplateSet } from '#handoff/template/template-set.ts';
import { circleOf } from '#handoff/template/template-sheet.ts';
import { lengthOutside, piecesLeft, polygonOf } from '#oracle/cut-sheet.ts';
import { tessellate } from '#support/geometry/tessellate.ts';

const SAG = 0.002;

export function templateFaults(set: TemplateSet): string[] {
  return [
    ...stretchFaults(set),
    ...set.lines.flatMap((line, index) => lineFaults(set, line).map((fault) => `line ${index}: ${fault}`)),
    ...set.templates.flatMap((_, index) =>
      sheetFaults(set, index).map((fault) => `template ${index + 1}: ${fault}`),
    ),
    ...slotFaults(set),
    ...(set.input.choices.knife.side === 'middle' ? coverFaults(set) : []),
  ];
}

function lineFaults({ input }: TemplateSet, { line, slots, bridges }: LaidLine): string[] {
  const { bridge } = input.choices;
  const faults: string[] = [];
  const all = [...slots, ...bridges].sort((a, b) => a.from - b.from);
  const first = itemAt(all, 0).from;
  let at = first;
  for (const { from, to } of all) {
    if (Math.abs(from - at) > 1e-6) faults.push(`a gap or overlap of ${from - at} at ${at}`);
    at = to;
  }
  if (Math.abs(at - first - line.length) > 1e-6) faults.push(`${at - first} of ${line.length} covered`);
  if (line.path.closed && bridges.length < 2) faults.push('closed, with less than two bridges');
  for (const { from, to } of slots) {
    if (to - from > bridge.apart + 1e-6) faults.push(`a slot of ${to - from}`);
    if (line.path.closed && to - from < bridge.width - 1e-6) faults.push(`a slot of only ${to - from}`);
  }
  return [...faults, ...cornerFaults(line, bridges, bridge.clear)];
}

function cornerFaults(
  { path, length }: LaidLine['line'],
  bridges: LaidLine['bridges'],
  clear: number,
): string[] {
  const laps = path.closed ? [-length, 0, length] : [0];
  const corners = cornersOf(path).flatMap((corner) => laps.map((lap) => corner + lap));
  return bridges
    .filter(({ from, to }) => path.closed || (from > 0 && to < length))
    .flatMap(({ from, to }) => corners.map((corner) => Math.max(from - corner, corner - to)))
    .filter((away) => away < clear - 1e-6)
    .map((away) => `a bridge ${away} from a corner`);
}

/** Turns of more than 10°. */
function cornersOf({ closed, spans }: Path): number[] {
  const corners: number[] = [];
  let passed = 0;
  spans.forEach((span, index) => {
    const before = index === 0 && !closed ? undefined : spans.at(index - 1);
    const turn = before === undefined ? 1 : dot(tangentAlong(before, 1), tangentAlong(span, 0));
    if (turn < Math.cos((10 * Math.PI) / 180)) corners.push(passed);
    passed += spanLength(span);
  });
  return corners;
}

/** One piece, of the area that is left when nothing overlaps; and webs between slots of different lines. */
function sheetFaults({ sheet, templates, input, lines, band }: TemplateSet, index: number): string[] {
  const faults: string[] = [];
  const slots = itemAt(templates, index);
  const rings = slots.flatMap(({ outline }) => outline.map((loop) => tessellate(loop, SAG)));
  const holes = sheet.holes.map((hole) => tessellate(circleOf(hole), SAG));
  const pieces = piecesLeft(tessellate(sheet.outline, SAG), [...rings, ...holes]);
  if (pieces.length !== 1) faults.push(`${pieces.length} pieces: ${pieces.join(', ')}`);
  const polygons = rings.map(polygonOf);
  slots.forEach((slot, a) => {
    slots.slice(0, a).forEach((other, b) => {
      const [one, two] = [itemAt(polygons, a), itemAt(polygons, b)];
      const { web, bridge } = input.choices;
      const joined = slot.line === other.line ? joinedEnds(lines, slot, other, bridge.width) : undefined;
      const gap = one.distance(two);
      if (joined === undefined) {
        if (gap < web - 0.01) faults.push(`a web of ${gap}`);
        return;
      }
      if (gap < (bridge.width * 2) / 3 - 0.01) faults.push(`a bridge of ${gap}`);
      const length = spansLength(slot.spans);
      const rest = { from: joined.start ? web : 0, to: length - (joined.end ? web : 0) };
      if (rest.from >= rest.to) return;
      const left = slotOutline(stretchAlong(slot.spans, rest), band).map((loop) =>
        polygonOf(tessellate(loop, SAG)),
      );
      const past = Math.min(...left.map((each) => each.distance(two)));
      if (past < web - 0.01) faults.push(`a web of ${past} past a bridge`);
    });
  });
  return faults;
}

/** At which ends of the first slot a bridge leads to the second; undefined for none. */
function joinedEnds(
  lines: readonly LaidLine[],
  { line, spans }: Slot,
  other: Slot,
  width: number,
): { readonly start: boolean; readonly end: boolean } | undefined {
  const { path } = itemAt(lines, line).line;
  const chain = path.closed ? [...path.spans, ...path.spans] : path.spans;
  const first = (chain: readonly Span[]): Point => itemAt(chain, 0).start;
  const last = (chain: readonly Span[]): Point => itemAt(chain, chain.length - 1).end;
  const bridges = itemAt(lines, line)
    .bridges.filter(({ from, to }) => to - from < width + 1e-6)
    .map(({ from, to }) => {
      const lap = from < 0 ? itemAt(lines, line).line.length : 0;
      return stretchAlong(chain, { from: from + lap, to: to + lap });
    });
  const isBridged = (from: Point, to: Point): boolean =>
    bridges.some((each) => distance(first(each), from) < 1e-6 && distance(last(each), to) < 1e-6);
  const joined = {
    start: isBridged(last(other.spans), first(spans)),
    end: isBridged(last(spans), first(other.spans)),
  };
  return joined.start || joined.end ? joined : undefined;
}

/** Each slot has its own stretch of line inside, is as wide as the knife, and is one loop. */
function slotFaults({ templates, input, band }: TemplateSet): string[] {
  return templates.flat().flatMap(({ outline, spans }) => {
    if (outline.length !== 1) return [`a slot of ${outline.length} loops`];
    const faults: string[] = [];
    const area = polygonOf(tessellate(itemAt(outline, 0), SAG)).getArea();
    const most = spansLength(spans) * input.choices.knife.width * 1.2 + 2 * band.reach ** 2 * spans.length;
    if (area > most) faults.push(`a slot of ${area} mm² on ${spansLength(spans)} mm`);
    const edge = itemAt(outline, 0);
    for (const span of spans) {
      const least = Math.min(...edge.map((each) => distanceToSpan(each, span.start)));
      if (least > band.reach + 1e-3) faults.push('a slot away from its line');
    }
    return faults;
  });
}

/** Each slot holds its stretch of the line. With the ranges above, slots and bridges are then the whole line. */
function coverFaults({ templates }: TemplateSet): string[] {
  return templates.flat().flatMap(({ outline, spans }) => {
    const { x, y } = itemAt(spans, spans.length - 1).end;
    const left = lengthOutside(
      [...tessellate(spans, SAG), [x, y]],
      outline.map((loop) => tessellate(loop, SAG)),
    );
    return left > 1e-3 ? [`${left} of a slot's line outside it`] : [];
  });
}

/** Of each line the slots follow as much as its ranges say. */
function stretchFaults({ lines, templates }: TemplateSet): string[] {
  return lines.flatMap(({ slots }, index) => {
    const made = templates.flat().filter(({ line }) => line === index);
    const followed = made.reduce((sum, { spans }) => sum + spansLength(spans), 0);
    const wanted = slots.reduce((sum, { from, to }) => sum + to - from, 0);
    const isWhole = made.length === slots.length && Math.abs(followed - wanted) < 1e-6;
    return isWhole ? [] : [`line ${index}: ${followed} mm of ${wanted} in slots`];
  });
}
