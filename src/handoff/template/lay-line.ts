/**
 * A scribe line divided into slots and bridges. Slots and bridges follow each other without gap or overlap, so that together
 * they are the line. An open line that runs into another has a last stretch without slot, cut by hand, if enough of it is
 * left; else its slot runs to the end, and another template takes it.
 */
import { type Span, spanLength } from '#geometry/span.ts';
import { isCorner } from '#handoff/cut-lines.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import type { LineMeets } from './line-meets.ts';
import { type BridgeRule, placeBridges, type Range } from './place-bridges.ts';
import { type LaidLine, type RuledLine, slotBand } from './template-set.ts';

/** An arc of a radius under so many bridges is as good as a corner, where there is other room: our own choice. */
const TIGHT = 6;
/** On an arc of a radius under so many reaches of a slot no bridge stands: its narrow side would be under two thirds of it. */
const TOO_TIGHT = 3;

/** Undefined where bridges find no room. */
export function layLine(
  line: RuledLine,
  meets: LineMeets,
  { bridge, knife }: Pick<TemplateChoices, 'bridge' | 'knife'>,
): LaidLine | undefined {
  const { path, length } = line;
  const rule = { width: bridge.width, longest: bridge.apart, shortest: bridge.width };
  const keep = bridge.width / 2 + bridge.clear;
  const hard = [
    ...[...cornersOf(path), ...meets.at].map((at) => ({ from: at - keep, to: at + keep })),
    ...tightArcs(path.spans, TOO_TIGHT * slotBand(knife).reach, bridge.width / 2),
  ];
  const soft = tightArcs(path.spans, TIGHT * bridge.width, keep);
  const place = (ends: readonly [number, number]) =>
    placed(line, ends, [...hard, ...soft], rule) ?? placed(line, ends, hard, rule);
  if (path.closed) return place([0, 0]);
  const corners = cornersOf(path);
  const start = pastCorners(meets.ends[0], corners, bridge.clear);
  const fromEnd = corners.map((at) => length - at).reverse();
  const end = pastCorners(meets.ends[1], fromEnd, bridge.clear);
  if (length - start - end >= Math.max(bridge.width, knife.width)) return place([start, end]);
  if (length >= knife.width) return place([0, 0]);
  return { line, slots: [], bridges: [{ from: 0, to: length }] };
}

/** A slot that stops short stops clear of corners too, so that it does not reach round one over what is left of the line. */
function pastCorners(stop: number, corners: readonly number[], clear: number): number {
  if (stop === 0) return 0;
  return corners.reduce((at, corner) => (Math.abs(at - corner) < clear ? corner + clear : at), stop);
}

function cornersOf({ closed, spans }: RuledLine['path']): number[] {
  const corners: number[] = [];
  let passed = 0;
  spans.forEach((span, index) => {
    const before = index > 0 || closed ? spans.at(index - 1) : undefined;
    if (isCorner(before, span)) corners.push(passed);
    passed += spanLength(span);
  });
  return corners;
}

function tightArcs(spans: readonly Span[], radius: number, grown: number): Range[] {
  const ranges: Range[] = [];
  let passed = 0;
  for (const span of spans) {
    const length = spanLength(span);
    if (span.kind === 'arc' && span.radius < radius) {
      ranges.push({ from: passed - grown, to: passed + length + grown });
    }
    passed += length;
  }
  return ranges;
}

function placed(
  line: RuledLine,
  [start, end]: readonly [number, number],
  keepOut: readonly Range[],
  rule: BridgeRule,
): LaidLine | undefined {
  const { path, length } = line;
  const shifted = keepOut.map(({ from, to }) => ({ from: from - start, to: to - start }));
  const middles = placeBridges(
    { length: length - start - end, isClosed: path.closed, keepOut: shifted },
    rule,
  );
  if (middles === undefined) return undefined;
  const half = rule.width / 2;
  const bridges = middles.map((at) => ({ from: at + start - half, to: at + start + half }));
  if (path.closed) return { line, bridges, slots: gapsBetween(bridges, length) };
  const whole = [
    ...(start > 0 ? [{ from: 0, to: start }] : []),
    ...bridges,
    ...(end > 0 ? [{ from: length - end, to: length }] : []),
  ];
  const slots: Range[] = [];
  let at = 0;
  for (const { from, to } of [...whole, { from: length, to: length }]) {
    if (from > at) slots.push({ from: at, to: from });
    at = to;
  }
  return { line, bridges: whole, slots };
}

/** From each bridge to the next, round a closed line. */
function gapsBetween(bridges: readonly Range[], length: number): Range[] {
  return bridges.map(({ to }, index) => {
    const next = bridges[index + 1] ?? bridges[0];
    const lap = index + 1 < bridges.length ? 0 : length;
    return { from: to, to: (next?.from ?? 0) + lap };
  });
}
