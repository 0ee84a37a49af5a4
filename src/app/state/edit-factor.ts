/** The etch factor of a job, as pure functions: (job, arguments) → job. */
import type { JobFile } from '#part/job-file.ts';
import { withoutOpenings } from './edit-coupons.ts';

/** Undercut over depth; undefined leaves it to the bath. It stands in place of one the other way up and of coupons' openings. */
export function setEtchFactor(job: JobFile, etchFactor: number | undefined): JobFile {
  const { etchFactor: _, depthPerUndercut, coupon, ...process } = job.process;
  return {
    ...job,
    process: {
      ...process,
      ...(coupon === undefined ? {} : { coupon: withoutOpenings(coupon) }),
      ...(etchFactor === undefined ? {} : { etchFactor }),
    },
  };
}
