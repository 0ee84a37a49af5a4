/**
 * Where a stage's mark stands along a scribe line on screen: one group of ticks every so many pixels, each moved to the
 * straightest stretch near its place and never over a corner. A line too short for its mark gets none: it takes a tag.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Path, pointAlong, type Span, spanLength, spansLength, tangentAlong } from '#geometry/span.ts';
import { type MarkTick, tickPlaces } from '#plan/stage-mark.ts';

export interface MarkAsk {
  readonly stage: number;
  readonly pixelsPerMm: number;
  /** Between two ticks, and from group to group; px. */
  readonly pitch: number;
  readonly every: number;
}

/** Clear of corners and ends, px. */
const CLEAR = 4;
/** A group may bend with its line by so much, radians: half a tick more and its ticks no longer read as one mark. */
const MOST_BEND = 1.2;
/** Where two spans join by more than this, radians, there is a corner. */
const CORNER = 0.02;
/** A pixel off its place counts as much as this bend, radians. */
const BEND_OF_PIXEL = 0.004;

export function markTicks(line: Path, ask: MarkAsk): MarkTick[] {
  const { stage, pixelsPerMm, pitch } = ask;
  const places = tickPlaces(stage).map((place) => (place * pitch) / pixelsPerMm);
  const width = places.at(-1) ?? 0;
  return groupMiddles(line, ask).flatMap((middle) =>
    places.map((place) => tickAt(line, middle - width / 2 + place)),
  );
}

/** Distances along the line, mm, of the middles of its groups. */
export function groupMiddles(line: Path, { stage, pixelsPerMm, pitch, every }: MarkAsk): number[] {
  const length = spansLength(line.spans);
  const room = ((tickPlaces(stage).at(-1) ?? 0) * pitch + 2 * CLEAR) / pixelsPerMm;
  if (length < room) return [];
  const count = Math.max(
    1,
    Math.min(Math.round((length * pixelsPerMm) / every), Math.floor(length / (2 * room))),
  );
  const stretches = straightStretches(line);
  const middles: number[] = [];
  for (let group = 0; group < count; group++) {
    const preferred = ((group + 0.5) * length) / count;
    const found = bestMiddle(stretches, { preferred, room, reach: length / count / 2, pixelsPerMm });
    if (found !== undefined) middles.push(found);
  }
  return middles;
}

/** A part of the line without a corner, by distance along it, and how it bends. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Radians a millimetre at each distance: spans in order. */
  readonly bends: readonly { readonly to: number; readonly bend: number }[];
}

function straightStretches({ spans }: Path): Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  let at = 0;
  let bends: { to: number; bend: number }[] = [];
  spans.forEach((span, index) => {
    const before = spans[index - 1];
    if (before !== undefined && turnBetween(before, span) > CORNER) {
      stretches.push({ from, to: at, bends });
      from = at;
      bends = [];
    }
    at += spanLength(span);
    bends.push({ to: at, bend: span.kind === 'line' ? 0 : 1 / span.radius });
  });
  return [...stretches, { from, to: at, bends }];
}

function turnBetween(before: Span, after: Span): number {
  const [a, b] = [tangentAlong(before, 1), tangentAlong(after, 0)];
  return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
}

interface GroupPlace {
  readonly preferred: number;
  readonly room: number;
  readonly reach: number;
  readonly pixelsPerMm: number;
}

function bestMiddle(stretches: readonly Stretch[], place: GroupPlace): number | undefined {
  const { preferred, room, reach, pixelsPerMm } = place;
  let best: { readonly middle: number; readonly cost: number } | undefined;
  for (const stretch of stretches) {
    if (
      stretch.to - stretch.from < room ||
      stretch.to < preferred - reach ||
      stretch.from > preferred + reach
    )
      continue;
    for (const middle of middlesOf(stretch, preferred, room)) {
      const off = Math.abs(middle - preferred);
      const bend = bendWithin(stretch, middle - room / 2, middle + room / 2);
      if (off > reach || bend > MOST_BEND) continue;
      const cost = bend + off * pixelsPerMm * BEND_OF_PIXEL;
      if (best === undefined || cost < best.cost) best = { middle, cost };
    }
  }
  return best?.middle;
}

/** The preferred place, and on each span the nearest to it where the whole group lies on that span. */
function middlesOf({ from, to, bends }: Stretch, preferred: number, room: number): number[] {
  const within = (start: number, end: number) =>
    end - start < room ? [] : [Math.min(end - room / 2, Math.max(start + room / 2, preferred))];
  return [
    ...within(from, to),
    ...bends.flatMap(({ to: end }, index) => within(bends[index - 1]?.to ?? from, end)),
  ];
}

function bendWithin({ from, bends }: Stretch, start: number, end: number): number {
  let total = 0;
  bends.forEach(({ to, bend }, index) => {
    const begin = bends[index - 1]?.to ?? from;
    total += bend * Math.max(0, Math.min(end, to) - Math.max(start, begin));
  });
  return total;
}

function tickAt({ spans }: Path, distance: number): MarkTick {
  let passed = 0;
  for (const span of spans) {
    const length = spanLength(span);
    if (distance <= passed + length && length > 0) return tickOn(span, (distance - passed) / length);
    passed += length;
  }
  return tickOn(itemAt(spans, spans.length - 1), 1);
}

function tickOn(span: Span, share: number): MarkTick {
  const along = tangentAlong(span, share);
  return { at: pointAlong(span, share), across: { x: -along.y, y: along.x } };
}
