/**
 * Depth notes: texts of a drawing that stand inside a region and read like what is to be asked of it. `2.20` is a depth,
 * `t 1.6` a final thickness (the letter t before a thickness: ISO 129-1, from memory), both with a tolerance where one
 * follows: `2.20 ±0.1`, `t1.6 +0.1 -0.05`. They are offers: nothing is asked until the engineer takes one.
 */
import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { readLength } from '#units/read-length.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { RegionId } from './part.ts';

/** What a note reads like, in mm. */
export interface DepthNote {
  readonly asks: 'depth' | 'thickness';
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

/** Notes are written in inches on drawings in inches or feet, else in millimetres. */
export function unitOfNotes(drawing: LengthUnit): ShownUnit {
  return IN_INCHES.has(drawing) ? 'in' : 'mm';
}

const IN_INCHES: ReadonlySet<LengthUnit> = new Set(['in', 'ft', 'yd', 'mil', 'us-in', 'us-ft', 'us-yd']);
const THICKNESS = /^t\s*=?\s*(?=[\d.,])/i;
const TOLERANCE = /^(.*?)\s*(?:±\s*(.+)|\+\s*(.+?)\s*\/?\s*[-−]\s*(.+))$/;

/** Undefined where the text reads like neither. */
export function readDepthNote(text: string, { unit, prefix, thickness }: NoteRule): DepthNote | undefined {
  const bare = text.trim();
  const isThickness = THICKNESS.test(bare);
  if (!isThickness && !bare.toLowerCase().startsWith(prefix.toLowerCase())) return undefined;
  const rest = isThickness ? bare.replace(THICKNESS, '') : bare.slice(prefix.length).replace(/^\s*=?\s*/, '');
  const [, nominal = rest, both, plus = both, minus = both] = TOLERANCE.exec(rest) ?? [];
  const length = unsigned(nominal, unit);
  if (length === undefined || length <= 0) return undefined;
  if (thickness !== undefined && length >= thickness) return undefined;
  const note = { asks: isThickness ? 'thickness' : 'depth', length } as const;
  if (plus === undefined || minus === undefined) return note;
  const tolerance = { plus: unsigned(plus, unit), minus: unsigned(minus, unit) };
  if (tolerance.plus === undefined || tolerance.minus === undefined) return undefined;
  return { ...note, plus: tolerance.plus, minus: tolerance.minus };
}

function unsigned(text: string, unit: ShownUnit): number | undefined {
  if (/^[+\-−]/.test(text.trim())) return undefined;
  const length = readLength(text, unit);
  return length === undefined ? undefined : Number(length.toFixed(6));
}
