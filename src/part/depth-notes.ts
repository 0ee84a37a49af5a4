/**
 * Depth notes: texts of a drawing that stand inside a region and read like what is to be asked of it. `2.20` alone may be a depth
 * or what is left: the engineer says which. Some say it themselves: `t 1.6`, `T=.063`, `1.6 THK` a final thickness (the letter t
 * before a thickness: ISO 129-1, from memory), `2.0 DEEP`, `DEPTH 2.0` a depth. A tolerance may follow, `2.20 ±0.1`,
 * `t1.6 +0.1 -0.05`, and the same figure in the other unit in brackets, `1.6 (.063)`, which then gives the unit of both. How often it
 * holds on the drawing is passed over: `2X .063`, `.063 TYP`, `.063 (4) PL`. They are offers: nothing is asked until the engineer takes one.
 */

import type { Point } from '#geometry/point.ts';
import { SAME_IN_OTHER_UNIT } from '#units/depth-tolerances.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { readLength } from '#units/read-length.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { RegionId } from './part.ts';

/** What a note reads like, in mm. */
export interface DepthNote {
  readonly asks: 'depth' | 'thickness';
  /** The text itself says which of the two it is. */
  readonly isSaid: boolean;
  readonly length: number;
  readonly plus?: number;
  readonly minus?: number;
}

export interface DepthOffer extends DepthNote {
  readonly region: RegionId;
  readonly text: string;
  readonly at: Point;
  /** Another note in the same region reads otherwise. */
  readonly isDisputed: boolean;
}

export interface NoteRule {
  /** Unit of figures that name none. */
  readonly unit: ShownUnit;
  /** What a depth begins with on this drawing; empty where it stands bare. */
  readonly prefix: string;
  /** Sheet, mm, where it is known: no note asks for more. */
  readonly thickness?: number | undefined;
}

interface Note {
  readonly text: string;
  /** Where the text hangs. */
  readonly at: Point;
}

export interface UnreadNote {
  readonly region: RegionId;
  readonly text: string;
}

/** In the order of the regions; the same note twice in a region is one offer. */
export function depthNotes(
  notes: readonly Note[],
  regionAt: (at: Point) => RegionId | undefined,
  rule: NoteRule,
): DepthOffer[] {
  const byRegion = new Map<RegionId, Map<string, Omit<DepthOffer, 'isDisputed'>>>();
  for (const { text, at } of notes) {
    const note = readDepthNote(text, rule);
    const region = note && regionAt(at);
    if (note === undefined || region === undefined) continue;
    const offers = byRegion.get(region) ?? new Map();
    const key = JSON.stringify(note);
    if (!offers.has(key)) offers.set(key, { ...note, region, text, at });
    byRegion.set(region, offers);
  }
  return [...byRegion]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, offers]) =>
      [...offers.values()].map((offer) => ({ ...offer, isDisputed: offers.size > 1 })),
    );
}

/**
 * Texts with a figure in regions that no depth note was read of, as `TAPER .063 TO .032`: they may ask what is not understood here. In the
 * order of the drawing.
 */
export function unreadNotes(
  notes: readonly Note[],
  regionAt: (at: Point) => RegionId | undefined,
  rule: NoteRule,
): UnreadNote[] {
  const read = new Set(depthNotes(notes, regionAt, rule).map(({ region }) => region));
  return notes.flatMap(({ text, at }) => {
    const region = /\d/.test(text) ? regionAt(at) : undefined;
    return region === undefined || read.has(region) ? [] : [{ region, text: text.trim() }];
  });
}

/** Notes are written in inches on drawings in inches or feet, else in millimetres. */
export function unitOfNotes(drawing: LengthUnit): ShownUnit {
  return IN_INCHES.has(drawing) ? 'in' : 'mm';
}

const IN_INCHES: ReadonlySet<LengthUnit> = new Set(['in', 'ft', 'yd', 'mil', 'us-in', 'us-ft', 'us-yd']);
const THICKNESS_BEFORE = /^(?:t|thk|thickness)\s*[:=]?\s*(?=[\d.,])/i;
const THICKNESS_AFTER = /\s*(?:thk|thick|remaining|remains|left)\.?$/i;
const DEPTH_BEFORE = /^(?:depth|deep|dp)\s*[:=]?\s*(?=[\d.,])/i;
const DEPTH_AFTER = /\s*(?:deep|depth|dp)\.?$/i;
/** How often a figure holds, common practice on drawings: after it, as `TYP` or a number of places; before it, as `4X`, with a space, for `4x1.2` are two lengths. */
const TYPICAL = /[\s,]+typ(?:ical)?\.?$/i;
const PLACES = /[\s,]+(?:\([1-9]\d{0,2}\)|[1-9]\d{0,2})\s?(?:pls?|plcs?|places?)\.?$/i;
const TIMES = /^(?:[1-9]\d{0,2}[x×]|\([1-9]\d{0,2}[x×]\))\s+/i;
const TOLERANCE = /^(.*?)\s*(?:±\s*(.+)|\+\s*(.+?)\s*\/?\s*[-−]\s*(.+))$/;
const IN_BRACKETS = /^(.*?\S)\s*[([]\s*([\d.,/\s]+?)\s*[)\]]$/;

/** Undefined where the text reads like neither. */
export function readDepthNote(text: string, { unit, prefix, thickness }: NoteRule): DepthNote | undefined {
  const { asks, isSaid, rest } = meaningOf(withoutCount(text.trim()), prefix) ?? {};
  if (asks === undefined || isSaid === undefined || rest === undefined) return undefined;
  const [, nominal = rest, both, plus = both, minus = both] = TOLERANCE.exec(rest) ?? [];
  const length = dualFigure(nominal) ?? unsigned(nominal, unit);
  if (length === undefined || length <= 0) return undefined;
  if (thickness !== undefined && length >= thickness) return undefined;
  const note = { asks, isSaid, length } as const;
  if (plus === undefined || minus === undefined) return note;
  const tolerance = { plus: unsigned(plus, unit), minus: unsigned(minus, unit) };
  if (tolerance.plus === undefined || tolerance.minus === undefined) return undefined;
  return { ...note, plus: tolerance.plus, minus: tolerance.minus };
}

function withoutCount(text: string): string {
  return text.replace(TYPICAL, '').replace(PLACES, '').replace(TYPICAL, '').replace(TIMES, '');
}

/** What a note gives, and what is left of it without the words that say so. */
function meaningOf(
  text: string,
  prefix: string,
): (Pick<DepthNote, 'asks' | 'isSaid'> & { readonly rest: string }) | undefined {
  const said = [
    [THICKNESS_BEFORE, 'thickness'],
    [THICKNESS_AFTER, 'thickness'],
    [DEPTH_BEFORE, 'depth'],
    [DEPTH_AFTER, 'depth'],
  ] as const;
  for (const [words, asks] of said) {
    if (words.test(text)) return { asks, isSaid: true, rest: text.replace(words, '') };
  }
  if (!text.toLowerCase().startsWith(prefix.toLowerCase())) return undefined;
  // Letters that the engineer named as those before a depth say what it is.
  return { asks: 'depth', isSaid: prefix !== '', rest: text.slice(prefix.length).replace(/^\s*=?\s*/, '') };
}

/** `1.6 (.063)` or `.063 (1.6)`, mm: only where the two are one length in both units. */
function dualFigure(text: string): number | undefined {
  const [, first, second] = IN_BRACKETS.exec(text) ?? [];
  if (first === undefined || second === undefined) return undefined;
  for (const [one, other] of [
    ['mm', 'in'],
    ['in', 'mm'],
  ] as const) {
    const [length, again] = [unsigned(first, one), unsigned(second, other)];
    if (length === undefined || again === undefined || length <= 0) continue;
    if (Math.abs(again - length) <= SAME_IN_OTHER_UNIT * length) return length;
  }
  return undefined;
}

function unsigned(text: string, unit: ShownUnit): number | undefined {
  if (/^[+\-−]/.test(text.trim())) return undefined;
  const length = readLength(text, unit);
  return length === undefined ? undefined : toMillionth(length);
}
