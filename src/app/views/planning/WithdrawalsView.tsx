/** Tapers made by drawing the part out of the bath, beside the same in steps. */

import { HeadRow } from '#app/views/HeadRow.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { WithdrawalRecord } from '#job/formats/plan-file.ts';
import { lengthFigure, type ShownUnit, showLength, showMinutes } from '#units/show-length.ts';

export function WithdrawalsView() {
  const unit = useWorkbenchState(({ session }) => session.unit);
  const withdrawals = useWorkbenchState(({ derived }) => derived.page?.results?.withdrawals) ?? [];
  if (withdrawals.length === 0) {
    return (
      <p className="aside">
        Shown for tapers whose job file names a hoist, process.hoist, with its slowest and fastest speed.
      </p>
    );
  }
  return withdrawals.map((each) => (
    <WithdrawalTable key={each.regions.join(' ')} withdrawal={each} unit={unit} />
  ));
}

interface WithdrawalTableProps {
  readonly withdrawal: WithdrawalRecord;
  readonly unit: ShownUnit;
}

function WithdrawalTable({ withdrawal, unit }: WithdrawalTableProps) {
  const { regions, rows, minutes, worstDeviation, steps } = withdrawal;
  return (
    <>
      <table>
        <caption>{regions.join(', ')}: waterline from the shallow end</caption>
        <HeadRow columns={['from minute', `waterline, ${unit}`, `${unit}/min`]} />
        <tbody>
          {rows.map(({ minute, waterline, speed }) => (
            <tr key={minute}>
              <td>{minute.toFixed(1)}</td>
              <td>{lengthFigure(waterline, unit)}</td>
              <td>{lengthFigure(speed, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Drawn out: {showMinutes(minutes)}, at worst {showLength(worstDeviation, unit)} off.{' '}
        {steps === null
          ? 'The levels of this plan do not serve the taper in steps.'
          : `In steps: ${counted(steps.stages, 'stage')}, ${showMinutes(steps.minutes)}, at worst ${showLength(steps.worstDeviation, unit)} off.`}
      </p>
    </>
  );
}
