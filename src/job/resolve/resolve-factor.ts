/** Etch factor of a job, undercut over depth: as given in either convention, from its coupons, or the bath's general figure. */
import { COARSEST_OPENING, couponFactor } from '#bath/coupon.ts';
import type { EtchFactor } from '#bath/etch-factor.ts';
import { FACTOR_UNITS } from '#bath/figures-file.ts';
import type { Bath } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { EtchFiguresAsked } from '#job/fields/etch-figure-fields.ts';
import { couponsOf, couponWords } from '#job/job-coupons.ts';
import { givenFigure, jobMillimetres, provenanceOf } from '#job/job-figures.ts';
import { LARGEST_FACTOR, SMALLEST_FACTOR } from '#job/process-assumptions.ts';
import { fromMemory } from '#job/sources.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { judgeGeneral } from './judge-general.ts';

export interface ResolvedFactor {
  readonly table: EtchFactor | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

const PATH = 'process.etchFactor';
const INVERSE_PATH = 'process.depthPerUndercut';
const [UNIT, INVERSE_UNIT] = FACTOR_UNITS;

/** A table by depth whose factors are depth over undercut is turned over row by row, and linear between those. */
export function resolveFactor(
  given: Pick<EtchFiguresAsked, 'etchFactor' | 'depthPerUndercut' | 'coupon'>,
  known: { readonly bath: Bath | undefined; readonly unit: LengthUnit },
): ResolvedFactor {
  const resolved = statedFactor(given, known);
  const worst = worstBeyond(resolved.table?.map(([, factor]) => factor) ?? [], [
    1 / MOST_TIMES_ONE,
    MOST_TIMES_ONE,
  ]);
  if (worst === undefined) return resolved;
  const facts = { factor: worst, least: 1 / MOST_TIMES_ONE, most: MOST_TIMES_ONE };
  const keys = ['etchFactor', 'depthPerUndercut', 'coupon'] as const;
  const path = `process.${keys.find((key) => given[key] !== undefined) ?? 'bath'}`;
  return { ...NOTHING, findings: [finding('etch-factor-impossible', facts, { path })] };
}

/** No metal in no bath is undercut a hundred times as far as it is etched, or so much less; our own choice. */
const MOST_TIMES_ONE = 100;

function statedFactor(
  given: Pick<EtchFiguresAsked, 'etchFactor' | 'depthPerUndercut' | 'coupon'>,
  { bath, unit }: { readonly bath: Bath | undefined; readonly unit: LengthUnit },
): ResolvedFactor {
  const { etchFactor, depthPerUndercut } = given;
  const stated = etchFactor ?? depthPerUndercut;
  if (stated !== undefined) {
    const rows = Array.isArray(stated)
      ? stated.map(([depth, factor]) => ({ depth: jobMillimetres(depth, unit), factor }))
      : [{ depth: undefined, factor: stated }];
    return ofRows(rows, etchFactor === undefined);
  }
  const coupons = couponsOf(given.coupon, unit);
  const lost = coupons.findIndex(({ opening }) => opening !== undefined && opening.after <= opening.before);
  const opening = coupons[lost]?.opening;
  if (opening !== undefined) {
    const { before, after } = opening;
    const path = `process.coupon${Array.isArray(given.coupon) ? `[${lost}]` : ''}.opening`;
    return { ...NOTHING, findings: [finding('coupon-not-undercut', { before, after }, { path })] };
  }
  const measured = couponFactor(coupons);
  const factor: Sourced | undefined =
    measured === undefined
      ? bath?.etchFactor
      : { ...measured, source: couponWords(coupons.filter((each) => each.opening)), kind: 'measured' };
  if (factor === undefined) return { ...NOTHING, findings: judgeGeneral('etch factor', factor, bath) };
  return {
    table: [[0, factor.value]],
    provenance: [{ ...provenanceOf('etch factor', UNIT, factor), field: PATH }],
    findings: [
      ...(measured === undefined ? judgeGeneral('etch factor', factor, bath) : judgeOpening(measured)),
      ...doubts([factor.value], 'process.coupon'),
    ],
  };
}

function judgeOpening({ value, plusMinus = 0 }: Pick<Sourced, 'value' | 'plusMinus'>): Finding[] {
  const share = plusMinus / value;
  const limit = COARSEST_OPENING.value;
  return share <= limit ? [] : [finding('opening-too-coarse', { share, limit }, { path: 'process.coupon' })];
}

const NOTHING: ResolvedFactor = { table: undefined, provenance: [], findings: [] };

interface Row {
  /** Undefined for a factor that holds at every depth. */
  readonly depth: number | undefined;
  readonly factor: number;
}

function ofRows(rows: readonly Row[], isInverse: boolean): ResolvedFactor {
  const path = isInverse ? INVERSE_PATH : PATH;
  const turn = (factor: number): number => (isInverse ? 1 / factor : factor);
  const words = ({ factor }: Row): string => (isInverse ? `${path}: ${factor} ${INVERSE_UNIT}` : path);
  return {
    table: rows.map(({ depth = 0, factor }) => [depth, turn(factor)]),
    provenance: rows.map((row) => ({
      ...provenanceOf(
        row.depth === undefined ? 'etch factor' : `etch factor at ${row.depth} mm`,
        UNIT,
        givenFigure(turn(row.factor), words(row)),
      ),
      field: PATH,
    })),
    findings: doubts(
      rows.map(({ factor }) => turn(factor)),
      path,
    ),
  };
}

/** Outside what is seen in any metal and bath: most likely the other convention, or a slip. The worst is reported. */
function doubts(factors: readonly number[], path: string): Finding[] {
  const [least, most] = [SMALLEST_FACTOR.value, LARGEST_FACTOR.value];
  const worst = worstBeyond(factors, [least, most]);
  return worst === undefined
    ? []
    : [finding('etch-factor-doubtful', { factor: worst, least, most }, { path })];
}

function worstBeyond(
  factors: readonly number[],
  [least, most]: readonly [least: number, most: number],
): number | undefined {
  const isOff = (factor: number) => factor < least || factor > most;
  return factors.filter(isOff).sort((a, b) => timesOff(b) - timesOff(a))[0];
}

/** How many times as large or as small as 1. */
function timesOff(factor: number): number {
  return Math.max(factor, 1 / factor);
}

/**
 * How far the factor may be off, ±, where the job does not say: what its coupons leave open, what is said of the bath's figure (of a
 * range its wider side), else a tenth of the factor. Undefined where there is no factor.
 */
export function resolveFactorSpread(
  given: Pick<EtchFiguresAsked, 'etchFactor' | 'depthPerUndercut' | 'coupon'>,
  known: { readonly bath: Bath | undefined; readonly unit: LengthUnit },
): Sourced | undefined {
  const { table } = resolveFactor(given, known);
  if (table === undefined) return undefined;
  const largest = Math.max(...table.map(([, factor]) => factor));
  const assumed = fromMemory(toFigure(largest * FACTOR_SHARE));
  if ((given.etchFactor ?? given.depthPerUndercut) !== undefined) return assumed;
  const coupons = couponsOf(given.coupon, known.unit).filter(({ opening }) => opening !== undefined);
  const measured = couponFactor(coupons);
  if (measured?.plusMinus !== undefined) {
    return {
      value: toFigure(measured.plusMinus),
      source: `left open by ${couponWords(coupons)}`,
      kind: 'measured',
    };
  }
  const factor = known.bath?.etchFactor;
  if (factor === undefined) return assumed;
  const { value, source, kind, plusMinus } = factor;
  const { from = value, to = value } = known.bath?.factorRange ?? {};
  const doubt = plusMinus ?? Math.max(value - from, to - value);
  return doubt > 0 ? { value: toFigure(doubt), source, kind } : assumed;
}

/** Share of an etch factor by which it may be off, ±, where nothing says; from memory. */
const FACTOR_SHARE = 0.1;

/** Six digits, as a share is given. */
function toFigure(value: number): number {
  return Number(value.toPrecision(6));
}
