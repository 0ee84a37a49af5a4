/** Which unit a drawing is read in: the job's when it sets one, else the drawing's own. Never a guess: without either it is a finding. */
import { type Finding, finding } from '#findings/finding.ts';
import { type LengthUnit, millimetresIn, unitOfInsunits } from '#units/length-unit.ts';
import type { DrawingHeader } from './read-header.ts';

export interface DrawingUnit {
  readonly unit: LengthUnit | undefined;
  readonly stated: LengthUnit | undefined;
  /** mm in one drawing unit; 1 when no unit is known, so that the drawing can at least be seen. */
  readonly millimetres: number;
  /** Set by the job: beyond doubt. */
  readonly isSet: boolean;
  readonly findings: readonly Finding[];
}

export function settleUnit(header: DrawingHeader, set: LengthUnit | undefined): DrawingUnit {
  const written = header.insunits?.trim() ?? '';
  const value = written === '' ? 0 : Number(written);
  const stated = unitOfInsunits(value);
  const unit = set ?? stated;
  const findings: Finding[] = [];
  if (unit === undefined) {
    findings.push(
      value === 0
        ? finding('drawing-unit-missing', {})
        : finding('drawing-unit-unknown', { value: written.slice(0, 20) }),
    );
  } else if (stated !== undefined && stated !== unit) {
    findings.push(finding('drawing-unit-overridden', { stated, used: unit }));
  }
  return {
    unit,
    stated,
    millimetres: unit === undefined ? 1 : millimetresIn(unit),
    isSet: set !== undefined,
    findings,
  };
}

const IMPERIAL: ReadonlySet<LengthUnit> = new Set(['in', 'ft', 'mil', 'yd', 'us-in', 'us-ft', 'us-yd']);

/**
 * Inches in a drawing that was otherwise set up metric are the commonest slip, since inches are the default of many templates.
 * The other way round is common and harmless: nobody sets millimetres by accident. `sizeOf` gives the drawing's size in
 * millimetres, and is only asked when there is a doubt.
 */
export function doubtUnit(
  header: DrawingHeader,
  unit: DrawingUnit,
  sizeOf: () => number,
): readonly Finding[] {
  const { stated } = unit;
  if (stated === undefined || unit.isSet || !IMPERIAL.has(stated)) return [];
  if (header.measurement?.trim() !== '1') return [];
  const size = sizeOf() / unit.millimetres;
  return size > 0 ? [finding('drawing-unit-doubtful', { stated, size })] : [];
}
