/** Etch factors by depth, in place of one for all depths; depths are in the job's unit. */
import { factorWay } from '#app/state/edits/edit-factor.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { RowsField } from './RowsField.tsx';

export function FactorByDepth({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const way = factorWay(job) ?? 'etchFactor';
  const given = job.process[way];
  return (
    <RowsField
      label={JOB.members.process.members.etchFactor.parts.byDepth.label}
      rows={Array.isArray(given) ? given : []}
      columns={['depth', 'factor']}
      onTake={(rows) =>
        actions.edit('etch factor by depth', (before) =>
          setField(before, ['process', way], rows.length === 0 ? undefined : rows),
        )
      }
    />
  );
}
