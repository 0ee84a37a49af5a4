/** Drawn edges, those of one step together: how far they may come out off their lines, what moves them, and what helps. */
import { budgetsOnShow } from '#app/state/shown-bands.ts';
import { allowedFigures, edgeName } from '#app/views/edge-figures.ts';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import {
  AMPLIFIED,
  changesWords,
  LINE_CAUSE_WORDS,
  type LineCause,
  type LineChange,
} from '#findings/edge-words.ts';
import { shownInLabels } from '#job/field-labels.ts';
import type { LineBudgetRecord, LineSumRecord } from '#job/formats/plan-file.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

export function EdgesView() {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState(({ session }) => session.unit);
  const picked = useWorkbenchState(({ session }) => session.edge);
  const page = useWorkbenchState(({ derived }) => derived.page);
  const edges = budgetsOnShow(page);
  if (edges.length === 0) return <p className="aside">No edge is drawn.</p>;
  return (
    <>
      <table className="edges">
        <caption>± {unit} off the drawn line, run by the clock</caption>
        <HeadRow columns={['level | beside', 'likely', 'all at once', 'allowed']} />
        <tbody>
          {edges.map(({ index, budget }) => (
            <tr key={index}>
              <th scope="row">
                <button
                  type="button"
                  className="go"
                  aria-pressed={index === picked}
                  onClick={() => actions.pickEdge(index === picked ? undefined : index)}
                >
                  {edgeName(budget, unit)}
                </button>
              </th>
              <td className={isOver(budget.byClock) ? 'over' : ''}>
                {gaugedFigure(budget.byClock.outward.likely, unit)}
              </td>
              <td>{gaugedFigure(worstOf(budget.byClock), unit)}</td>
              <td>{allowedWords(budget.byClock, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {edges.map(({ index, budget }) =>
        index === picked ? <EdgeCauses key={index} budget={budget} unit={unit} /> : null,
      )}
      <p className="aside">
        Likely is the root-sum-square of independent causes. A picked edge is shown on the sheet, with what is
        allowed in dashes; “edges ±” under the sheet shows all of them.
      </p>
    </>
  );
}

interface EdgeProps {
  readonly budget: LineBudgetRecord;
  readonly unit: ShownUnit;
}

/** What each cause comes to by itself, the largest first, and what helps most. */
function EdgeCauses({ budget, unit }: EdgeProps) {
  const { byClock, gauged, remedy, amplification } = budget;
  const parts = (Object.entries(byClock.parts) as [LineCause, number][])
    .filter(([, half]) => half >= PRINTED_AS_NOTHING)
    .sort(([, a], [, b]) => b - a);
  const most = parts[0]?.[1] ?? 0;
  return (
    <div className="edge-causes">
      <dl>
        {parts.map(([cause, half]) => (
          <div key={cause}>
            <dt>{LINE_CAUSE_WORDS[cause]}</dt>
            <dd>
              <meter min={0} max={most} value={half} aria-hidden="true" />
              {gaugedFigure(half, unit)}
            </dd>
          </div>
        ))}
      </dl>
      {amplification >= AMPLIFIED && (
        <p>It moves {amplification.toFixed(1)} times as far as its step is off.</p>
      )}
      <p>Gauged on the way: ±&nbsp;{gaugedFigure(gauged.outward.likely, unit)} likely.</p>
      {remedy.changes.length > 0 && (
        <p>
          Most helps to {changesWords(remedy.changes as LineChange[], budget, shownInLabels(unit))}: ±&nbsp;
          {gaugedFigure(remedy.outward.likely, unit)}.
        </p>
      )}
    </div>
  );
}

function worstOf({ outward, inward }: LineSumRecord): number {
  return Math.max(outward.worst, inward.worst);
}

function isOver({ outward, inward }: LineSumRecord): boolean {
  return [outward, inward].some(({ likely, allowed }) => allowed !== null && likely > allowed);
}

function allowedWords({ outward, inward }: LineSumRecord, unit: ShownUnit): string {
  if (outward.allowed === null || inward.allowed === null) return 'not said';
  return allowedFigures(outward.allowed, inward.allowed, unit);
}
