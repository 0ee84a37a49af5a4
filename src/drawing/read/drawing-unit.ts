/** Which unit a drawing is read in: the job's when it sets one, else the drawing's own. Never a guess: without either it is a finding. */
import { type Finding, finding } from '#findings/finding.ts';
import { type LengthUnit, millimetresIn, unitOfInsunits } from '#units/length-unit.ts';
import type { DrawingHeader } from './read-header.ts';

export interface DrawingUnit {
  readonly unit: LengthUnit | undefined;
  readonly stated: LengthUnit | undefined;
  /** `$INSUNITS` as written, where it names no unit although it is not 0. */
  readonly unknown: string | undefined;
  /** mm in one drawing unit; 1 when no unit is known, so that the drawing can at least be seen. */
  readonly millimetres: number;
  /** Set by whoever asks for the drawing: beyond doubt. */
  readonly isSet: boolean;
}

/** Sides of a box, mm. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

export function settleUnit(header: DrawingHeader, set: LengthUnit | undefined): DrawingUnit {
  const written = header.insunits?.trim() ?? '';
  const value = written === '' ? 0 : Number(written);
  const stated = unitOfInsunits(value);
  const unit = set ?? stated;
  return {
    unit,
    stated,
    unknown: stated === undefined && value !== 0 ? written.slice(0, 20) : undefined,
    millimetres: unit === undefined ? 1 : millimetresIn(unit),
    isSet: set !== undefined,
  };
}

/** mm. Longer side of a part: no tank takes more, and less is no sheet (from memory). Outside, another unit is offered. */
const LARGEST_PART = 50_000;
const SMALLEST_PART = 1;
/** mm. What a part in a likely unit measures. */
const LIKELY = { least: 20, most: 20_000 };
const USUAL: readonly LengthUnit[] = ['mm', 'in', 'cm', 'm', 'ft'];
const IMPERIAL: ReadonlySet<LengthUnit> = new Set(['in', 'ft', 'mil', 'yd', 'us-in', 'us-ft', 'us-yd']);

/**
 * What there is to say about the unit, once it is known how large the drawing is. Inches in a drawing that was otherwise set up
 * metric are the commonest slip, since inches are the default of many templates. The other way round is common and harmless:
 * nobody sets millimetres by accident.
 */
export function doubtUnit(
  { measurement }: DrawingHeader,
  { unit, stated, unknown, millimetres, isSet }: DrawingUnit,
  extent: Extent | undefined,
): readonly Finding[] {
  // Sides in drawing units.
  const sides = extent && { width: extent.width / millimetres, height: extent.height / millimetres };
  const likely = likelyUnits(sides, unit);
  if (unit === undefined) {
    return [
      unknown === undefined
        ? finding('drawing-unit-missing', { sides, likely })
        : finding('drawing-unit-unknown', { value: unknown, sides, likely }),
    ];
  }
  if (isSet) {
    return stated === undefined || stated === unit
      ? []
      : [finding('drawing-unit-overridden', { stated, used: unit })];
  }
  if (sides === undefined) return [];
  const size = Math.max(sides.width, sides.height);
  if (!(size > 0)) return [];
  if (size * millimetres > LARGEST_PART || size * millimetres < SMALLEST_PART) {
    return [finding('drawing-size-unlikely', { stated: unit, sides, likely })];
  }
  return IMPERIAL.has(unit) && measurement?.trim() === '1'
    ? [finding('drawing-unit-doubtful', { stated: unit, size })]
    : [];
}

/** The usual units in which the drawing would be as large as parts are; millimetre and inch where none would. */
function likelyUnits(sides: Extent | undefined, own: LengthUnit | undefined): readonly LengthUnit[] {
  const size = Math.max(sides?.width ?? 0, sides?.height ?? 0);
  const fitting = USUAL.filter((each) => {
    const millimetres = size * millimetresIn(each);
    return each !== own && millimetres >= LIKELY.least && millimetres <= LIKELY.most;
  });
  return fitting.length > 0 ? fitting : USUAL.slice(0, 2).filter((each) => each !== own);
}
