/** The etch rate. Where the job leaves it to bath or coupons, the plan's own is shown. */
import { fromJobUnits, setRate } from '#app/state/edits/edit-figures.ts';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readLength } from '#units/read-length.ts';
import { usePlannedProcess } from './use-planned-process.ts';

export function RateField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const planned = usePlannedProcess();
  const given = job.process.rate;
  const figureIn = (length: number) => String(Number((length / millimetresIn(unit)).toPrecision(4)));
  return (
    <QuantityField
      label={JOB.members.process.members.rate.label}
      text={given === undefined ? '' : figureIn(fromJobUnits(job, given))}
      placeholder={planned?.rate === undefined ? 'none' : figureIn(planned.rate)}
      suffix={`${unit}/min`}
      read={(text) => positive(readLength(text, unit))}
      expected="Depth etched in a minute, above 0: 0.0297, 0,0297 or 0.00117 in."
      onTake={(value) => actions.edit(`rate ${figureIn(value)}`, (before) => setRate(before, value))}
      onClear={() => actions.edit('rate of the bath', (before) => setRate(before, undefined))}
    />
  );
}

function positive(value: number | undefined): number | undefined {
  return value !== undefined && value > 0 ? value : undefined;
}
