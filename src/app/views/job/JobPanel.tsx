/** All that the job says and the line above the sheet has no room for: sheet, bath, levels, rules. Opens in place. */
import { useMemo } from 'react';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useDocument } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { BathFields } from './BathFields.tsx';
import { CouponList } from './CouponList.tsx';
import { GroupFields } from './FieldControl.tsx';
import { LevelFields } from './LevelFields.tsx';
import { SheetFields } from './SheetFields.tsx';
import { TankFields } from './TankFields.tsx';

export function JobPanel() {
  const document = useDocument();
  if (document === undefined) return null;
  const { job, jobFileName } = document;
  return (
    <section className="job-panel" aria-label="What the job says">
      <Disclosure title="Sheet, bath, levels, rules">
        {/* What is typed in part belongs to its job. */}
        <JobFields key={jobFileName} job={job} />
      </Disclosure>
    </section>
  );
}

function JobFields({ job }: { readonly job: JobFile }) {
  const filled = useMemo(() => resolveJob(job, job.drawingUnits).filled, [job]);
  const part = { job, filled };
  return (
    <>
      <p className="aside">
        Grey figures are what counts while nothing is said; an emptied field says nothing.
      </p>
      <SheetFields {...part} />
      <BathFields {...part} />
      <TankFields {...part} />
      <CouponList {...part} />
      <LevelFields {...part} />
      <fieldset>
        <legend>Rules for making, at least</legend>
        <GroupFields group={JOB.members.rules} path={['rules']} {...part} />
      </fieldset>
    </>
  );
}
