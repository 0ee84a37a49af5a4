/** Borders and lines as the sides that narrow places lie between. */

import { itemAt } from '#geometry/assert.ts';
import { cross, distance, dot } from '#geometry/point.ts';
import { type Loop, type Path, type Span, tangentAlong } from '#geometry/span.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';

/** A border span with the area that is measured on its left. */
export interface Side {
  readonly span: Span;
  /** The border's own spans that it is made of, in order. */
  readonly parts: readonly Span[];
  /** Its neighbours on the same chain; undefined at an open end. */
  readonly before: Span | undefined;
  readonly after: Span | undefined;
  /** The chain that it is part of, all its spans in order, and its number there. */
  readonly chain: readonly Span[];
  readonly number: number;
  /** By how much the chain has turned from its start to that of each span, either way, and all the way round; radians. */
  readonly turns: readonly number[];
}

/** Radians: what turns by less has no two places that face each other within 30° of square. */
const LITTLE = Math.PI / 3 - 1e-6;

/**
 * The sides of closed loops that have the area on their left, as whole as can be: where a drawing cut a line in two decides nothing.
 * @param isAlike whether two neighbours are one side also otherwise
 */
export function sidesOf(loops: readonly Loop[], isAlike?: (a: Span, b: Span) => boolean): Side[] {
  return loops.flatMap((loop) => {
    const whole = wholeSpans(loop, isAlike);
    const chain = whole.map(({ span }) => span);
    const turns = turnsOf(chain, true);
    return whole.map(({ span, parts }, number) => ({
      span,
      parts,
      before: chain.at(number - 1),
      after: chain[(number + 1) % chain.length],
      chain,
      number,
      turns,
    }));
  });
}

export function sidesOfPath({ closed, spans }: Path): Side[] {
  if (closed) return sidesOf([spans]);
  const turns = turnsOf(spans, false);
  return spans.map((span, number) => ({
    span,
    parts: [span],
    before: spans[number - 1],
    after: spans[number + 1],
    chain: spans,
    number,
    turns,
  }));
}

/**
 * Whether one side follows from the other along their chain with so little turning that no place of the one can face a place of
 * the other, nor touch it. What was drawn as a curve of many short lines has such pairs almost alone.
 */
export function runsOn(a: Side, b: Side): boolean {
  return a.chain === b.chain && (turnsLittle(a, b) || turnsLittle(b, a));
}

/** Steps all within 60° of each other never come nearer to where they began. */
function turnsLittle({ span, turns, number }: Side, to: Side): boolean {
  const round = to.number > number ? 0 : itemAt(turns, turns.length - 1);
  const turn = round + itemAt(turns, to.number) - itemAt(turns, number) + ownTurn(to.span);
  return turn < LITTLE && distance(span.end, to.span.start) > 2 * TOUCHING;
}

function turnsOf(chain: readonly Span[], isClosed: boolean): number[] {
  let turn = 0;
  const turns = [turn];
  chain.forEach((span, number) => {
    const next = chain[number + 1] ?? (isClosed ? chain[0] : undefined);
    turn += ownTurn(span) + (next === undefined ? Number.POSITIVE_INFINITY : cornerBetween(span, next));
    turns.push(turn);
  });
  return turns;
}

function ownTurn(span: Span): number {
  return span.kind === 'arc' ? Math.abs(span.sweep) : 0;
}

function cornerBetween(span: Span, next: Span): number {
  const [arriving, leaving] = [tangentAlong(span, 1), tangentAlong(next, 0)];
  return Math.abs(atan2(cross(arriving, leaving), dot(arriving, leaving)));
}
