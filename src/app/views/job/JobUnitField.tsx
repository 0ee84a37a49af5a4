/** The job's own unit: what its file, its papers and its lists are written in. Lengths keep their size; what is on show may be in another unit. */
import { setJobUnit } from '#app/state/edits/job-unit.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

const { label } = JOB.members.units;

export function JobUnitField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  return (
    <div className="field-row">
      <span className="field-name">{label}</span>
      <Segments
        label={label}
        options={[
          { value: 'mm', words: 'mm' },
          { value: 'in', words: 'in' },
        ]}
        value={job.units ?? 'mm'}
        onTake={(unit) => {
          if (unit === (job.units ?? 'mm')) return;
          actions.edit(`unit of the job: ${unit}`, (before) => setJobUnit(before, unit));
          actions.readIn(unit);
        }}
      />
    </div>
  );
}
