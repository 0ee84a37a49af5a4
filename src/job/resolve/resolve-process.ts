/** The process of a job: bath, etch factor, rate, each as given, measured, or the bath's general figure with a warning. */
import type { Alloy, Bath } from '#bath/known-figures.ts';
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { FollowSetting } from '#job/fields/field.ts';
import { bathOf, type ProcessValues, process } from '#job/fields/process-fields.ts';
import { readGroup } from '#job/fields/read-group.ts';
import type { Job } from '#job/job.ts';
import { couponProvenance } from '#job/job-coupons.ts';
import { provenanceOf } from '#job/job-figures.ts';
import type { JobFile } from '#job/job-file.ts';
import {
  ASSUMED_GAUGE_NOISE,
  DRIFT_MINUTES,
  GAUGE_STEP,
  LARGEST_FACTOR,
  SMALLEST_FACTOR,
} from '#job/process-assumptions.ts';
import { resolveFactor } from './resolve-factor.ts';
import { resolveRate } from './resolve-rate.ts';

export interface ResolvedProcess {
  /** Undefined when nothing gives the etch factor or the rate. */
  readonly process: Job['process'] | undefined;
  readonly values: ProcessValues;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

interface ProcessSetting extends FollowSetting {
  readonly alloy: Alloy | undefined;
}

export function resolveProcess(given: JobFile['process'], setting: ProcessSetting): ResolvedProcess {
  const { values, asked, provenance } = readGroup(process, given, { ...setting, path: 'process.' });
  const bath = bathOf(values, setting);
  const { alloy, figures, units } = setting;
  const findings = checkBath(given.bath, { bath, alloy, baths: figures.baths });
  const factor = resolveFactor(asked, { bath, unit: units.job });
  const rate = resolveRate(asked, { bath, unit: units.job });
  findings.push(...factor.findings, ...rate.findings);
  const { depthPerUndercut, coupon, rateAtC, bathC, sizing, ...held } = values;
  const canReact = alloy === undefined || alloy.metal === bath?.etches;
  return {
    process:
      factor.table === undefined || rate.rate === undefined
        ? undefined
        : {
            ...held,
            ...(bath?.reaction !== undefined && canReact ? { reaction: bath.reaction } : {}),
            ...(bath === undefined ? {} : { bathNamed: { name: bath.name, etches: bath.etches } }),
            etchFactor: factor.table,
            rate: rate.rate.value,
          },
    values,
    provenance: [
      ...factor.provenance,
      provenanceOf('least etch factor seen', 'undercut / depth', SMALLEST_FACTOR),
      provenanceOf('greatest etch factor seen', 'undercut / depth', LARGEST_FACTOR),
      ...couponProvenance(given.coupon),
      ...rate.provenance,
      ...provenance,
      provenanceOf('gauge reading, standard deviation', 'mm', ASSUMED_GAUGE_NOISE),
      provenanceOf('step in which gauges are read', 'mm', GAUGE_STEP),
      provenanceOf('time in which the rate drifts by its spread', 'min', DRIFT_MINUTES),
    ],
    findings,
  };
}

function checkBath(
  name: string | undefined,
  {
    bath,
    alloy,
    baths,
  }: {
    readonly bath: Bath | undefined;
    readonly alloy: Alloy | undefined;
    readonly baths: readonly Bath[];
  },
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
