/** What may go wrong on each floor, part by part, against what is required: run by the clock, and gauged on the way. */
import { HeadRow } from '#app/views/HeadRow.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { BudgetRecord, BudgetSum } from '#job/formats/plan-file.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';

export function ToleranceView() {
  const unit = useWorkbenchState(({ session }) => session.unit);
  const budgets = useWorkbenchState(({ derived }) => derived.page?.results?.budgets) ?? [];
  if (budgets.length === 0) return <p className="aside">Nothing is etched.</p>;
  return (
    <>
      <table>
        <caption>± {unit} at worst, and the share of the tolerance that is likely used up</caption>
        <HeadRow columns={['level', 'sheet', 'rate', 'timing', 'by the clock', 'gauged']} />
        <tbody>
          {budgets.map((budget) => (
            <BudgetRow key={`${budget.level} ${budget.regions[0]}`} budget={budget} unit={unit} />
          ))}
        </tbody>
      </table>
      <p className="aside">
        Root-sum-square of independent parts, the level’s own distance from the middle added whole. Gauged:
        each stage measured at four fifths, its minutes corrected.
      </p>
    </>
  );
}

function BudgetRow({ budget, unit }: { readonly budget: BudgetRecord; readonly unit: ShownUnit }) {
  const { actions } = useWorkbench();
  const { level, regions, byClock, gauged } = budget;
  const { sheet, rate, timing } = byClock.parts;
  return (
    <tr>
      <th scope="row">
        <button type="button" className="go" onClick={() => actions.select(regions)}>
          {lengthFigure(level, unit)}
        </button>
      </th>
      <td>{lengthFigure(sheet, unit)}</td>
      <td>{lengthFigure(rate, unit)}</td>
      <td>{lengthFigure(timing, unit)}</td>
      <ShareCell sum={byClock} />
      <ShareCell sum={gauged} />
    </tr>
  );
}

function ShareCell({ sum: { share } }: { readonly sum: BudgetSum }) {
  if (share === null) return <td className="over">no tolerance</td>;
  return <td className={share > 1 ? 'over' : ''}>{Math.round(share * 100)}&nbsp;%</td>;
}
