/** The job file with its defaults filled in, in the job's own units: what the plan shows as the job that it planned. */
import { pathsFilled } from './bare-job.ts';
import type { Job, MakingRules } from './job.ts';
import {
  DEFAULT_DEPTH_TOLERANCE,
  DEFAULT_EDGE_DATUM,
  DEFAULT_MASKING,
  DEFAULT_TIMING,
  DEFAULT_UNITS,
} from './job-defaults.ts';
import { jobLength } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import type { KnownProcess } from './resolve-process.ts';

/** A job as far as it is resolved: of the process what has a figure. */
type Resolved = Omit<Job, 'process'> & { readonly process: KnownProcess };

/** What the engineer wrote stands as written; only what was left out is added, and the paths of what was are listed. */
export function fillJob(given: JobFile, resolved: Resolved): JobFile {
  const filled = filledIn(given, resolved);
  return { ...filled, assumed: pathsFilled(given, filled) };
}

function filledIn(given: JobFile, resolved: Resolved): JobFile {
  const units = given.units ?? DEFAULT_UNITS;
  const length = (millimetres: number) => jobLength(millimetres, units);
  const tolerance = length(DEFAULT_DEPTH_TOLERANCE.value);
  return {
    ...given,
    name: resolved.name,
    units,
    joinTolerance: given.joinTolerance ?? length(resolved.joinTolerance),
    layers: { outline: [...resolved.layers.outline], ...given.layers, ignore: [...resolved.layers.ignore] },
    stock: {
      ...given.stock,
      ...(resolved.stock.density === undefined ? {} : { density: resolved.stock.density }),
      minus: given.stock.minus ?? length(resolved.stock.minus),
      plus: given.stock.plus ?? length(resolved.stock.plus),
    },
    process: fillProcess(given.process, resolved.process, length),
    requirements: given.requirements.map((each) => ({
      ...each,
      plus: each.plus ?? tolerance,
      minus: each.minus ?? tolerance,
    })),
    rules: { ...lengthsOf(resolved.rules, length), ...given.rules },
    levels:
      given.levels ?? (typeof resolved.levels === 'string' ? resolved.levels : resolved.levels.map(length)),
  };
}

function fillProcess(
  given: JobFile['process'],
  { etchFactor, rate, rateSpread }: KnownProcess,
  length: (millimetres: number) => number,
): JobFile['process'] {
  const factor = etchFactor?.[0]?.[1];
  return {
    ...given,
    rateSpread: given.rateSpread ?? rateSpread,
    timing: given.timing ?? DEFAULT_TIMING.value,
    edgeDatum: given.edgeDatum ?? DEFAULT_EDGE_DATUM,
    masking: given.masking ?? DEFAULT_MASKING,
    ...(isFactorOpen(given) && factor !== undefined ? { etchFactor: factor } : {}),
    ...(isRateOpen(given) && rate !== undefined ? { rate: length(rate) } : {}),
  };
}

function isFactorOpen({ etchFactor, depthPerUndercut, coupon }: JobFile['process']): boolean {
  const coupons = [coupon ?? []].flat();
  return (
    etchFactor === undefined &&
    depthPerUndercut === undefined &&
    coupons.every(({ opening }) => opening === undefined)
  );
}

/** At another temperature the rate follows from the bath's own: filled in, it would be turned twice. */
function isRateOpen({ rate, coupon, bathC }: JobFile['process']): boolean {
  return rate === undefined && coupon === undefined && bathC === undefined;
}

function lengthsOf(rules: MakingRules, length: (millimetres: number) => number): MakingRules {
  return {
    minWeb: length(rules.minWeb),
    minLineSpacing: length(rules.minLineSpacing),
    minPieceWidth: length(rules.minPieceWidth),
    minLandWidth: length(rules.minLandWidth),
  };
}
