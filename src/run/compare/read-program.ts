/**
 * The lines that a machine program cuts: RS-274 words (NISTIR 6556, sections 3.3 to 3.5) to paths in millimetres. Taken are straight
 * moves and arcs in the plane at feed, with the tool at its lowest; what else a control does (offsets, cycles, macros) is not followed, and reported.
 * A path ends where the tool is lifted or travels. Never throws.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { distance, type Point } from '#geometry/point.ts';
import { type ArcSpan, type Path, pointAlong, type Span } from '#geometry/span.ts';
import { ROUNDING, SILENT_JOIN } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { millimetresIn } from '#units/length-unit.ts';

export interface ProgramLines {
  readonly paths: readonly Path[];
  readonly findings: readonly Finding[];
}

export function readProgram(text: string): ProgramLines {
  const state: State = {
    unit: 1,
    isAbsolute: true,
    motion: 0,
    at: { x: 0, y: 0, z: 0 },
    moves: [],
    unknown: [],
  };
  for (const [index, line] of text.split(/\r\n?|\n/).entries()) readBlock(state, line, index + 1);
  const paths = pathsOf(state.moves);
  return {
    paths,
    findings: [
      ...unknownWords(state),
      ...(paths.length > 0 ? [] : [finding('program-without-lines', { moves: state.moves.length })]),
    ],
  };
}

interface Place extends Point {
  readonly z: number;
}

/** `span` undefined: the tool travels, dips or lifts. */
interface Move {
  readonly span: Span | undefined;
  readonly z: number;
}

interface State {
  unit: number;
  isAbsolute: boolean;
  /** 0 to 3, as of G. */
  motion: number;
  at: Place;
  readonly moves: Move[];
  /** Words that are not followed, with their lines. */
  readonly unknown: { readonly word: string; readonly line: number }[];
}

/** A letter and a number; blanks between and inside count for nothing. */
const WORD = /([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/g;
/** G words that change nothing about lines in the plane: plane XY, feeds, paths, cancels of offsets and cycles, the first frame. */
const HARMLESS = new Set([4, 17, 40, 49, 54, 61, 61.1, 64, 80, 93, 94, 95]);

function readBlock(state: State, line: string, number: number): void {
  // A slash deletes a block for a control that is told so; what it may cut is not.
  const bare = line
    .replace(/\([^)]*\)/g, '')
    .replace(/;.*$/, '')
    .replace(/\s+/g, '')
    .toUpperCase();
  if (bare === '' || bare.startsWith('%') || bare.startsWith('/')) return;
  const words = new Map<string, number>();
  let rest = bare;
  for (const [whole, letter = '', digits] of bare.matchAll(WORD)) {
    rest = rest.replace(whole, '');
    const value = Number(digits);
    if (letter === 'G') takeG(state, value, number);
    else words.set(letter, value);
  }
  if (rest !== '') state.unknown.push({ word: rest.slice(0, 20), line: number });
  const asks = state.motion > 1 ? 'XYZIJR' : 'XYZ';
  if ([...words.keys()].some((letter) => asks.includes(letter))) move(state, words, number);
}

function takeG(state: State, value: number, line: number): void {
  if (value >= 0 && value <= 3 && Number.isInteger(value)) state.motion = value;
  else if (value === 20 || value === 21) state.unit = value === 20 ? millimetresIn('in') : 1;
  else if (value === 90 || value === 91) state.isAbsolute = value === 90;
  else if (!HARMLESS.has(value)) state.unknown.push({ word: `G${value}`, line });
}

function move(state: State, words: ReadonlyMap<string, number>, line: number): void {
  const { at: from, motion } = state;
  const to: Place = {
    x: reached(state, words, 'x'),
    y: reached(state, words, 'y'),
    z: reached(state, words, 'z'),
  };
  state.at = to;
  const isFlat = from.x !== to.x || from.y !== to.y;
  if (motion === 0 || (motion === 1 && !isFlat)) {
    state.moves.push({ span: undefined, z: to.z });
    return;
  }
  const z = Math.max(from.z, to.z);
  const span =
    motion === 1
      ? ({ kind: 'line', start: from, end: to } as const)
      : arcOf(state, { from, to, words, line });
  if (span === undefined) state.moves.push({ span, z });
  else for (const part of halves(flat(span))) state.moves.push({ span: part, z });
}

function reached(
  { at, unit, isAbsolute }: State,
  words: ReadonlyMap<string, number>,
  axis: 'x' | 'y' | 'z',
): number {
  const given = words.get(axis.toUpperCase());
  if (given === undefined) return at[axis];
  return given * unit + (isAbsolute ? 0 : at[axis]);
}

/** Bare points: a place of the tool carries its height too. */
function flat(span: Span): Span {
  const bare = ({ x, y }: Point): Point => ({ x, y });
  return { ...span, start: bare(span.start), end: bare(span.end) };
}

/** A span turns by half a turn at most. */
function halves(span: Span): Span[] {
  if (span.kind === 'line' || Math.abs(span.sweep) <= Math.PI) return [span];
  const middle = pointAlong(span, 0.5);
  const sweep = span.sweep / 2;
  return [
    { ...span, end: middle, sweep },
    { ...span, start: middle, sweep },
  ];
}

interface ArcAsked {
  readonly from: Point;
  readonly to: Point;
  readonly words: ReadonlyMap<string, number>;
  readonly line: number;
}

/** By its centre, from the start (I, J), or by its radius, more than half a turn where that is negative (R). */
function arcOf(state: State, { from, to, words, line }: ArcAsked): ArcSpan | undefined {
  const isLeft = state.motion === 3;
  const center = words.has('R')
    ? centerByRadius(from, to, (words.get('R') ?? 0) * state.unit, isLeft)
    : { x: from.x + (words.get('I') ?? 0) * state.unit, y: from.y + (words.get('J') ?? 0) * state.unit };
  const radius = center === undefined ? 0 : distance(center, from);
  if (center === undefined || radius < SILENT_JOIN) {
    state.unknown.push({ word: `G${state.motion} without a centre`, line });
    return undefined;
  }
  const [first, last] = [from, to].map(({ x, y }) => atan2(y - center.y, x - center.x));
  const turn = (last ?? 0) - (first ?? 0);
  const whole = 2 * Math.PI;
  const left = ((turn % whole) + whole) % whole;
  const isClosed = from.x === to.x && from.y === to.y;
  const sweep = isClosed ? whole : left;
  return {
    kind: 'arc',
    start: from,
    end: to,
    center,
    radius,
    sweep: isLeft ? sweep : sweep - (isClosed ? 2 : 1) * whole,
  };
}

function centerByRadius(from: Point, to: Point, radius: number, isLeft: boolean): Point | undefined {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = hypot(dx, dy);
  if (chord === 0) return undefined;
  const high = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  const side = isLeft === radius > 0 ? 1 : -1;
  return {
    x: (from.x + to.x) / 2 - (side * dy * high) / chord,
    y: (from.y + to.y) / 2 + (side * dx * high) / chord,
  };
}

/** Moves that follow each other at depth are one path; a closed one ends where it began. */
function pathsOf(moves: readonly Move[]): Path[] {
  const lowest = moves.reduce((least, { z }) => Math.min(least, z), Number.POSITIVE_INFINITY);
  const runs: Span[][] = [[]];
  for (const { span, z } of moves) {
    if (span === undefined || z > lowest + ROUNDING) runs.push([]);
    else runs.at(-1)?.push(span);
  }
  return runs
    .filter((spans) => spans.length > 0)
    .map((spans) => {
      const [first, last] = [spans[0]?.start, spans.at(-1)?.end];
      const closed = first !== undefined && last !== undefined && distance(first, last) <= SILENT_JOIN;
      return { closed, spans };
    });
}

/** One finding for all: the first names its line. */
function unknownWords({ unknown }: State): Finding[] {
  const [first] = unknown;
  if (first === undefined) return [];
  return [finding('program-word-unknown', { word: first.word, words: unknown.length }, { line: first.line })];
}
