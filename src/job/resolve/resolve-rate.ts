/**
 * Etch rate of a job, mm/min: as given, from its coupons, or the bath's general figure; turned to the temperature that the
 * bath is run at where that is another one (M5.6). How far it may be off widens the spread that the plan calculates with (M5.7).
 */
import { GAS_CONSTANT, LONGEST_TEMPERATURE_STEP, rateAtTemperature } from '#bath/arrhenius.ts';
import { COARSEST_COUPON, couponRate } from '#bath/coupon.ts';
import type { Bath } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { EtchFiguresAsked } from '#job/fields/etch-figure-fields.ts';
import { couponsOf, couponWords } from '#job/job-coupons.ts';
import { givenFigure, provenanceOf } from '#job/job-figures.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { judgeGeneral } from './judge-general.ts';

export interface ResolvedRate {
  readonly rate: Sourced | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

const UNIT = 'mm/min';

type GivenProcess = Pick<EtchFiguresAsked, 'rate' | 'coupon' | 'rateAtC' | 'bathC'>;

interface Setting {
  readonly bath: Bath | undefined;
  readonly unit: LengthUnit;
}

export function resolveRate(given: GivenProcess, { bath, unit }: Setting): ResolvedRate {
  const read = knownRate(given, { bath, unit });
  const known = { ...read, findings: [...read.findings, ...doubts(read.rate, given)] };
  const fromC =
    given.rateAtC ?? (given.rate === undefined && given.coupon === undefined ? bath?.rate?.atC : undefined);
  const { bathC } = given;
  if (known.rate === undefined || bathC === undefined || bathC === fromC) {
    return { ...known, provenance: provenanceOfRate(known.rate) };
  }
  if (fromC === undefined) {
    const facts = { key: 'rateAtC', expected: 'the temperature in °C that the rate was measured at' };
    return nothing([...known.findings, finding('job-key-missing', facts, { path: 'process' })]);
  }
  return turned(known.rate, { bath, fromC, toC: bathC });
}

function nothing(findings: readonly Finding[]): ResolvedRate {
  return { rate: undefined, provenance: [], findings };
}

function provenanceOfRate(rate: Sourced | undefined): Provenance[] {
  return rate === undefined ? [] : [{ ...provenanceOf('etch rate', UNIT, rate), field: 'process.rate' }];
}

function knownRate(given: GivenProcess, { bath, unit }: Setting): Omit<ResolvedRate, 'provenance'> {
  if (given.rate !== undefined) {
    return { rate: givenFigure(given.rate, 'process.rate'), findings: [] };
  }
  const coupons = couponsOf(given.coupon, unit);
  if (coupons.length === 0) {
    return { rate: bath?.rate, findings: judgeGeneral('etch rate', bath?.rate, bath) };
  }
  const lost = coupons.findIndex(({ before, after }) => after >= before);
  const whole = coupons[lost];
  if (whole !== undefined) {
    const path = `process.coupon${Array.isArray(given.coupon) ? `[${lost}]` : ''}`;
    const { before, after } = whole;
    return { rate: undefined, findings: [finding('coupon-not-etched', { before, after }, { path })] };
  }
  const rate: Sourced = { ...couponRate(coupons), source: couponWords(coupons), kind: 'measured' };
  return { rate, findings: judgeCoupons(rate, coupons.length) };
}

function judgeCoupons({ value, plusMinus = 0 }: Sourced, coupons: number): Finding[] {
  const share = plusMinus / value;
  if (share <= COARSEST_COUPON.value) return [];
  const facts = { share, limit: COARSEST_COUPON.value, coupons };
  return [finding('coupon-too-coarse', facts, { path: 'process.coupon' })];
}

/** mm/min. A tenth of the slowest bath that is built in, and over ten times the fastest; our own choice. */
const SLOWEST = 0.0005;
const FASTEST = 1;

function doubts(rate: Sourced | undefined, given: GivenProcess): Finding[] {
  if (rate === undefined || (rate.value >= SLOWEST && rate.value <= FASTEST)) return [];
  const keys = ['rate', 'coupon'] as const;
  const path = `process.${keys.find((key) => given[key] !== undefined) ?? 'bath'}`;
  return [finding('etch-rate-doubtful', { rate: rate.value, least: SLOWEST, most: FASTEST }, { path })];
}

function turned(
  rate: Sourced,
  { bath, fromC, toC }: { readonly bath: Bath | undefined; readonly fromC: number; readonly toC: number },
): ResolvedRate {
  const energy = bath?.activationEnergy;
  const place = { path: 'process.bathC' };
  if (energy === undefined) {
    return nothing([finding('activation-energy-missing', { fromC, toC, bath: bath?.name }, place)]);
  }
  const limit = LONGEST_TEMPERATURE_STEP.value;
  if (Math.abs(toC - fromC) > limit) {
    return nothing([finding('temperature-step-too-far', { fromC, toC, limit }, place)]);
  }
  const at = rateAtTemperature(rate, energy, { fromC, toC });
  const plusMinus = at.plusMinus ?? 0;
  return {
    rate: at,
    provenance: [
      provenanceOf(`etch rate at ${fromC} °C`, UNIT, rate),
      provenanceOf('activation energy', 'kJ/mol', energy),
      provenanceOf('gas constant', 'kJ/(mol K)', GAS_CONSTANT),
      provenanceOf('longest step of temperature', 'K', LONGEST_TEMPERATURE_STEP),
      ...provenanceOfRate(at),
    ],
    findings: [
      finding(
        'rate-turned-by-temperature',
        { fromC, toC, energy: energy.value, from: energy.from, to: energy.to, rate: at.value, plusMinus },
        place,
      ),
    ],
  };
}

/** Where the job gives none: the usual spread, or what the rate itself may be off by where that is more. */
export function resolveSpread(rate: Sourced | undefined, usual: Sourced): Sourced {
  const own = rate?.plusMinus === undefined ? 0 : rate.plusMinus / rate.value;
  if (rate === undefined || own <= usual.value) return usual;
  const value = Math.min(LARGEST_SPREAD, Number(own.toPrecision(6)));
  return { value, source: `what the rate may be off by: ${rate.source}`, kind: rate.kind };
}

/** A share is less than one. */
const LARGEST_SPREAD = 0.99;
