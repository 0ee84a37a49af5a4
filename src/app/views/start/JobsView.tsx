/** The jobs that this browser keeps, in place: open, name, copy, delete, and have the deleted one back. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { JobCard, KeptPlan } from '#app/state/keeping/kept-job.ts';
import { NameField } from '#app/views/NameField.tsx';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { PartPictureView } from './PartPictureView.tsx';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

export function JobsView() {
  const { jobList } = useWorkbench();
  const { jobs, deleted } = useStore(jobList.state);
  useEffect(() => void jobList.refresh(), [jobList]);
  return (
    <section className="jobs" aria-label="Jobs kept in this browser">
      <h2>Recent jobs</h2>
      {jobs.length === 0 && (
        <p className="aside">
          None yet. Open a drawing or a job, or change a sample: from then on every step is kept here.
        </p>
      )}
      <ul>
        {jobs.map((job) => (
          <JobRow key={job.id} job={job} />
        ))}
      </ul>
      {deleted !== undefined && (
        <p role="status">
          {deleted.name} is deleted.{' '}
          <button type="button" onClick={jobList.bringBack}>
            Bring it back
          </button>
        </p>
      )}
      <p className="aside">
        Kept by this browser, on this computer only. Save the job file to pass a job on or to file it.
      </p>
    </section>
  );
}

function JobRow({ job }: { readonly job: JobCard }) {
  const { jobList, layout } = useWorkbench();
  const open = async () => {
    if (await jobList.open(job.id)) layout.setState({ over: 'nothing' });
  };
  const isOpen = useWorkbenchState((state) => state.openJob?.id === job.id);
  const isElsewhere = useStore(jobList.state, ({ elsewhere }) => elsewhere.has(job.id));
  return (
    <li aria-current={isOpen}>
      <span className="job-picture">{job.plan && <PartPictureView picture={job.plan.picture} />}</span>
      <NameField
        label={`Name of ${job.name}`}
        name={job.name}
        isFixed={isElsewhere}
        onTake={(name) => jobList.rename(job.id, name)}
      />
      {job.plan === undefined ? <span className="aside">{job.drawing}</span> : <PlanWords {...job.plan} />}
      <span className="aside">{isElsewhere ? 'open in another window' : WHEN.format(job.changed)}</span>
      <span className="job-moves">
        <button type="button" disabled={isElsewhere} onClick={open}>
          {isOpen ? 'Open now' : 'Open'}
          <span className="unseen"> {job.name}</span>
        </button>
        <button type="button" onClick={() => jobList.copy(job.id)}>
          Copy<span className="unseen"> {job.name}</span>
        </button>
        <button type="button" disabled={isElsewhere} onClick={() => jobList.remove(job.id)}>
          Delete<span className="unseen"> {job.name}</span>
        </button>
      </span>
    </li>
  );
}

function PlanWords({ standing: { kind, words }, stages, minutes }: KeptPlan) {
  return (
    <span className="aside plan-words">
      {(kind === 'stop' || kind === 'warn') && <SeverityShape severity={kind} />}
      {words} · {counted(stages, 'stage')}, {minutes.toFixed(1)} min
    </span>
  );
}
