/** The jobs that this browser keeps, in place: open, name, copy, delete, and have the deleted one back. */
import { useStore } from 'zustand';
import type { JobCard } from '#app/state/kept-job.ts';
import { NameField } from '#app/views/NameField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

export function JobsView({ id }: { readonly id: string }) {
  const { jobList } = useWorkbench();
  const { jobs, deleted } = useStore(jobList.state);
  return (
    <section id={id} className="jobs" aria-label="Jobs kept in this browser">
      {jobs.length === 0 && (
        <p className="aside">
          None yet. Drop a drawing or a job file, or change the sample: from then on every step is kept here.
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
            bring it back
          </button>
        </p>
      )}
      <p className="aside">
        Kept by this browser on this machine only. The job file under Hand-off is the copy to pass on and to
        file.
      </p>
    </section>
  );
}

function JobRow({ job }: { readonly job: JobCard }) {
  const { jobList } = useWorkbench();
  const isOpen = useWorkbenchState((state) => state.openJob?.id === job.id);
  const isElsewhere = useStore(jobList.state, ({ elsewhere }) => elsewhere.has(job.id));
  return (
    <li aria-current={isOpen}>
      <NameField
        label={`Name of ${job.name}`}
        name={job.name}
        isFixed={isElsewhere}
        onTake={(name) => jobList.rename(job.id, name)}
      />
      <span className="aside">{job.drawing}</span>
      <span className="aside">{isElsewhere ? 'open in another window' : WHEN.format(job.changed)}</span>
      <span className="job-moves">
        <button type="button" disabled={isOpen || isElsewhere} onClick={() => jobList.open(job.id)}>
          {isOpen ? 'open now' : 'open'}
          <span className="unseen"> {job.name}</span>
        </button>
        <button type="button" onClick={() => jobList.copy(job.id)}>
          copy<span className="unseen"> {job.name}</span>
        </button>
        <button type="button" disabled={isElsewhere} onClick={() => jobList.remove(job.id)}>
          delete<span className="unseen"> {job.name}</span>
        </button>
      </span>
    </li>
  );
}
