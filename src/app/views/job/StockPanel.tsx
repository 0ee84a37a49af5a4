/** Sheet and bath: what the engineer has set, what applies where nothing is set, and what the run does to the bath. */
import { useMemo } from 'react';
import { PlanningView } from '#app/views/planning/PlanningView.tsx';
import { useDocument } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { BathFields } from './BathFields.tsx';
import { CouponList } from './CouponList.tsx';
import { GroupFields } from './FieldControl.tsx';
import { HoistFields } from './HoistFields.tsx';
import { JobUnitField } from './JobUnitField.tsx';
import type { JobPart } from './job-part.ts';
import { LevelFields } from './LevelFields.tsx';
import { SheetFields } from './SheetFields.tsx';
import { ShopDefaultButtons } from './ShopDefaultButtons.tsx';
import { SizingFields } from './SizingFields.tsx';
import { TankFields } from './TankFields.tsx';

export function StockPanel() {
  const document = useDocument();
  if (document === undefined) return <p className="aside">Open a drawing or a job first.</p>;
  const { job, jobFileName } = document;
  return (
    <section className="job-panel" aria-label="Settings of the job">
      {/* What is typed in part belongs to its job. */}
      <JobFields key={jobFileName} job={job} />
      <PlanningView />
    </section>
  );
}

function JobFields({ job }: { readonly job: JobFile }) {
  const part = useMemo((): JobPart => {
    const { filled, job: resolved } = resolveJob(job, job.drawingUnits ?? 'mm');
    return { job, filled, provenance: resolved?.provenance ?? [] };
  }, [job]);
  return (
    <>
      <JobUnitField job={job} />
      <SheetFields {...part} />
      <BathFields {...part} />
      <SizingFields {...part} />
      <TankFields {...part} />
      <CouponList {...part} />
      <HoistFields {...part} />
      <LevelFields {...part} />
      <fieldset>
        <legend>Limits of making, at least</legend>
        <GroupFields group={JOB.members.rules} path={['rules']} {...part} />
      </fieldset>
      <ShopDefaultButtons job={job} />
      <p className="aside default-note">
        <i className="default-ring" aria-hidden="true" /> Dashed: nobody has decided it; the default counts.
      </p>
    </>
  );
}
