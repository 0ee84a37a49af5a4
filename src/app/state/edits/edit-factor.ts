/** The etch factor of a job, as pure functions: (job, arguments) → job. */
import type { JobFile } from '#job/job-file.ts';
import { withoutOpenings } from './edit-coupons.ts';

/** Either convention, as the job file calls it: undercut over depth, or depth over undercut. */
export type FactorWay = 'etchFactor' | 'depthPerUndercut';

/** The convention that the job states its factor in; undefined where it leaves the factor to the bath or to coupons. */
export function factorWay({ process }: JobFile): FactorWay | undefined {
  if (process.etchFactor !== undefined) return 'etchFactor';
  return process.depthPerUndercut === undefined ? undefined : 'depthPerUndercut';
}

/** Undefined leaves it to the bath. It stands in place of one the other way up and of coupons' openings. */
export function setEtchFactor(job: JobFile, factor: number | undefined, way: FactorWay): JobFile {
  const { etchFactor, depthPerUndercut, coupon, ...process } = job.process;
  return {
    ...job,
    process: {
      ...process,
      ...(coupon === undefined ? {} : { coupon: withoutOpenings(coupon) }),
      ...(factor === undefined ? {} : { [way]: factor }),
    },
  };
}

/** The same factor, or table of factors, stated the other way up; a job that states none stays as it is. */
export function turnEtchFactor(job: JobFile): JobFile {
  const { etchFactor, depthPerUndercut, ...process } = job.process;
  const stated = etchFactor ?? depthPerUndercut;
  if (stated === undefined) return job;
  const turned = Array.isArray(stated)
    ? stated.map(([depth, factor]): [number, number] => [depth, turnedOver(factor)])
    : turnedOver(stated);
  const way: FactorWay = etchFactor === undefined ? 'etchFactor' : 'depthPerUndercut';
  return { ...job, process: { ...process, [way]: turned } };
}

/** To six digits, or up to four where these turn back into the factor: 0.57 turned twice is 0.57 again. */
export function turnedOver(factor: number): number {
  const turned = 1 / factor;
  const digits = [1, 2, 3, 4].find((count) => toDigits(1 / toDigits(turned, count), 6) === factor) ?? 6;
  return toDigits(turned, digits);
}

function toDigits(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
