/** The etch rate. Where the job leaves it to bath or coupons, the plan's own is shown. */
import { fromJobUnits, setRate } from '#app/state/edits/edit-figures.ts';
import { SpeedField } from '#app/views/SpeedField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { usePlannedProcess } from './use-planned-process.ts';

export function RateField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const planned = usePlannedProcess();
  const given = job.process.rate;
  return (
    <SpeedField
      of={JOB.members.process.members.rate}
      speed={given === undefined ? undefined : fromJobUnits(job, given)}
      usual={planned?.rate}
      source={planned?.sourceOf('process.rate')}
      expected="Depth etched in a minute, above 0: 0.0297, 0,0297 or 0.00117 in."
      onTake={(value, shown) => actions.edit(`rate ${shown}`, (before) => setRate(before, value))}
      onClear={() => actions.edit('rate of the bath', (before) => setRate(before, undefined))}
    />
  );
}
