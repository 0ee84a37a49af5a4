/** The process of a job: bath, etch factor, rate, each as given, measured, or the bath's general figure with a warning. */
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Alloy, Bath } from '#bath/known-figures.ts';
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import type { Job } from './job.ts';
import { couponProvenance } from './job-coupons.ts';
import {
  ASSUMED_GAUGE_NOISE,
  DEFAULT_EDGE_DATUM,
  DEFAULT_MASKING,
  DEFAULT_TIMING,
  DRIFT_MINUTES,
  GAUGE_STEP,
  LARGEST_FACTOR,
  SMALLEST_FACTOR,
} from './job-defaults.ts';
import { givenFigure, provenanceOf } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import { resolveFactor } from './resolve-factor.ts';
import { resolveRate, resolveSpread } from './resolve-rate.ts';

export interface ResolvedProcess {
  /** Undefined when nothing gives the etch factor or the rate. */
  readonly process: Job['process'] | undefined;
  /** As much of it as has a figure, whatever is missing. */
  readonly known: KnownProcess;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

export interface KnownProcess {
  readonly etchFactor: EtchFactor | undefined;
  readonly rate: number | undefined;
  readonly rateSpread: number;
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
  const factor = resolveFactor(given, { bath, unit });
  const rate = resolveRate(given, { bath, unit });
  findings.push(...factor.findings, ...rate.findings);
  const spread = resolveSpread(given.rateSpread, rate.rate);
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
            ...(given.tank === undefined ? {} : { tank: given.tank }),
            ...(given.hoist === undefined ? {} : { hoist: hoistOf(given.hoist, unit) }),
          },
    known: { etchFactor: factor.table, rate: rate.rate?.value, rateSpread: spread.value },
    provenance: [
      ...factor.provenance,
      provenanceOf('least etch factor seen', 'undercut / depth', SMALLEST_FACTOR),
      provenanceOf('greatest etch factor seen', 'undercut / depth', LARGEST_FACTOR),
      ...couponProvenance(given.coupon),
      ...rate.provenance,
      provenanceOf('rate spread', '±', spread),
      provenanceOf('timing of an immersion, ±', 'min', timing),
      provenanceOf('gauge reading, standard deviation', 'mm', ASSUMED_GAUGE_NOISE),
      provenanceOf('step in which gauges are read', 'mm', GAUGE_STEP),
      provenanceOf('time in which the rate drifts by its spread', 'min', DRIFT_MINUTES),
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
