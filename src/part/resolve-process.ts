/** Etch factor and rate of a job: as given, from the coupon, or the bath's general figures with a warning. */
import { couponRate } from '#bath/coupon-rate.ts';
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Alloy, Bath } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import type { Job } from './job.ts';
import {
  ASSUMED_GAUGE_NOISE,
  DEFAULT_EDGE_DATUM,
  DEFAULT_MASKING,
  DEFAULT_RATE_SPREAD,
  DEFAULT_TIMING,
} from './job-defaults.ts';
import { givenFigure, jobMillimetres, provenanceOf } from './job-figures.ts';
import type { JobFile } from './job-file.ts';

export interface ResolvedProcess {
  /** Undefined when nothing gives the etch factor or the rate. */
  readonly process: Job['process'] | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

interface ProcessSetting {
  readonly alloy: Alloy | undefined;
  readonly unit: LengthUnit;
  readonly baths: readonly Bath[];
}

type GivenProcess = JobFile['process'];

export function resolveProcess(given: GivenProcess, { alloy, unit, baths }: ProcessSetting): ResolvedProcess {
  const bath = baths.find((each) => each.id === given.bath);
  const findings = checkBath(given.bath, { bath, alloy, baths });
  const factor = resolveFactor(given.etchFactor, bath, unit);
  const rate = resolveRate(given, bath, unit);
  findings.push(...factor.findings, ...rate.findings, ...checkMasking(given));
  const spread =
    given.rateSpread === undefined
      ? DEFAULT_RATE_SPREAD
      : givenFigure(given.rateSpread, 'process.rateSpread');
  const timing = given.timing === undefined ? DEFAULT_TIMING : givenFigure(given.timing, 'process.timing');
  return {
    process:
      factor.table === undefined || rate.rate === undefined
        ? undefined
        : {
            bath: given.bath,
            ...(bath?.reaction !== undefined && (alloy === undefined || alloy.metal === bath.etches)
              ? { reaction: bath.reaction }
              : {}),
            etchFactor: factor.table,
            rate: rate.rate.value,
            rateSpread: spread.value,
            timing: timing.value,
            edgeDatum: given.edgeDatum ?? DEFAULT_EDGE_DATUM,
            masking: given.masking ?? DEFAULT_MASKING,
            ...(given.hoist === undefined ? {} : { hoist: hoistOf(given.hoist, unit) }),
          },
    provenance: [
      ...factor.provenance,
      ...(rate.rate === undefined ? [] : [provenanceOf('etch rate', 'mm/min', rate.rate)]),
      provenanceOf('rate spread', '±', spread),
      provenanceOf('timing of an immersion, ±', 'min', timing),
      provenanceOf('gauge reading, standard deviation', 'mm', ASSUMED_GAUGE_NOISE),
    ],
    findings,
  };
}

function hoistOf(
  { slowest, fastest }: NonNullable<GivenProcess['hoist']>,
  unit: LengthUnit,
): NonNullable<Job['process']['hoist']> {
  return { slowest: slowest * millimetresIn(unit), fastest: fastest * millimetresIn(unit) };
}

function checkBath(
  name: string | undefined,
  { bath, alloy, baths }: Omit<ProcessSetting, 'unit'> & { readonly bath: Bath | undefined },
): Finding[] {
  if (name === undefined) return [];
  if (bath === undefined) {
    const known = baths.map((each) => each.id);
    return [
      finding('bath-unknown', { name, meant: nearestWord(name, known), known }, { path: 'process.bath' }),
    ];
  }
  if (alloy === undefined || alloy.metal === bath.etches) return [];
  const facts = { bath: bath.name, alloy: alloy.name, etches: bath.etches, metal: alloy.metal };
  return [finding('bath-wrong-for-alloy', facts, { path: 'process.bath' })];
}

/** On a coat of its own a window may not pass the floor that it lies on; walls that stand outside the drawn line would ask for that. */
function checkMasking({ masking, edgeDatum = DEFAULT_EDGE_DATUM }: GivenProcess): Finding[] {
  if (masking !== 're-mask' || edgeDatum === 'shallow-edge') return [];
  return [finding('re-mask-needs-shallow-edge', { edgeDatum }, { path: 'process.edgeDatum' })];
}

interface ResolvedFactor {
  readonly table: EtchFactor | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

const FACTOR_PATH = 'process.etchFactor';

function resolveFactor(
  given: GivenProcess['etchFactor'],
  bath: Bath | undefined,
  unit: LengthUnit,
): ResolvedFactor {
  if (Array.isArray(given)) {
    const table = given.map(([depth, factor]) => [jobMillimetres(depth, unit), factor] as const);
    const provenance = table.map(([depth, factor]) =>
      provenanceOf(`etch factor at ${depth} mm`, 'undercut / depth', givenFigure(factor, FACTOR_PATH)),
    );
    return { table, provenance, findings: [] };
  }
  const factor = given === undefined ? bath?.etchFactor : givenFigure(given, FACTOR_PATH);
  return {
    table: factor === undefined ? undefined : [[0, factor.value]],
    provenance: factor === undefined ? [] : [provenanceOf('etch factor', 'undercut / depth', factor)],
    findings: given === undefined ? judgeGeneral({ figure: 'etch factor', unit: '' }, factor, bath) : [],
  };
}

interface ResolvedRate {
  readonly rate: Sourced | undefined;
  readonly findings: readonly Finding[];
}

function resolveRate({ rate, coupon }: GivenProcess, bath: Bath | undefined, unit: LengthUnit): ResolvedRate {
  if (rate !== undefined) {
    return { rate: givenFigure(rate * millimetresIn(unit), 'process.rate'), findings: [] };
  }
  if (coupon === undefined) {
    return {
      rate: bath?.rate,
      findings: judgeGeneral({ figure: 'etch rate', unit: 'mm/min' }, bath?.rate, bath),
    };
  }
  const before = jobMillimetres(coupon.before, unit);
  const after = jobMillimetres(coupon.after, unit);
  if (after >= before) {
    const lost = finding('coupon-not-etched', { before, after }, { path: 'process.coupon' });
    return { rate: undefined, findings: [lost] };
  }
  const measured: Sourced = {
    value: couponRate({ ...coupon, before, after }),
    source: `coupon, ${coupon.faces === 1 ? 'one face' : 'both faces'} bare for ${coupon.minutes} min`,
    kind: 'measured',
  };
  return { rate: measured, findings: [] };
}

/** A bath's general figure gets the plan going, but it is not this bath's figure; without one there is no plan. */
function judgeGeneral(
  { figure, unit }: { readonly figure: 'etch factor' | 'etch rate'; readonly unit: string },
  value: Sourced | undefined,
  bath: Bath | undefined,
): Finding[] {
  const path = figure === 'etch factor' ? FACTOR_PATH : 'process.rate';
  if (value === undefined || bath === undefined) {
    return [finding('process-figure-missing', { figure, bath: bath?.name }, { path })];
  }
  // A shop's own figure may be a measured one.
  if (value.kind === 'measured') return [];
  return [
    finding('process-figure-not-measured', { figure, value: value.value, unit, bath: bath.name }, { path }),
  ];
}
