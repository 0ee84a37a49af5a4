/** Lines that came back: what is wrong with them, and how far each drawn edge would come out elsewhere. A row leads to its place. */

import { allowedFigures, edgeName } from '#app/views/edge-figures.ts';
import { FindingList } from '#app/views/FindingList.tsx';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { useGoTo } from '#app/views/use-go-to.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { Comparison, EdgeCompared } from '#run/compare/compare-returned.ts';
import type { ReturnedFile } from '#run/compare/returned-lines.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import './returned.css';

export function ReturnedView({ file }: { readonly file: ReturnedFile }) {
  const { actions } = useWorkbench();
  const comparison = useWorkbenchState(({ derived }) => derived.comparison);
  const isBehind = useWorkbenchState(
    ({ derived }) => derived.isStale || derived.comparison?.of !== derived.page?.plan,
  );
  const answer = comparison?.file === file ? comparison.answer : undefined;
  return (
    <section className={isBehind ? 'returned stale' : 'returned'} aria-label="Lines that came back">
      <header>
        <h3>Lines that came back</h3>
        <button type="button" onClick={actions.putReturnedAway}>
          Put away
        </button>
      </header>
      {answer === undefined ? (
        <p className="aside">{file.name} is being held against the plan.</p>
      ) : (
        <>
          <p className="aside">
            {file.name}
            {answer.comparison !== undefined && `: ${linesWords(answer.comparison)}`}
          </p>
          {answer.findings.length === 0 && <p>Every edge comes out where it was planned.</p>}
          <FindingList findings={answer.findings} />
          {answer.comparison !== undefined && <MovedEdges comparison={answer.comparison} />}
        </>
      )}
    </section>
  );
}

function linesWords({ lines, face, hand }: Comparison): string {
  const side = face === 'far' ? 'the plan’s far face' : 'the plan';
  const turned = hand === 'opposite' ? ' of the opposite hand, mirrored and' : '';
  return `${counted(lines, 'line', 'lines')}${turned} held against ${side}; the job stays as it is.`;
}

function MovedEdges({ comparison: { edges } }: { readonly comparison: Comparison }) {
  const unit = useWorkbenchState(({ session }) => session.unit);
  if (edges.length === 0) return null;
  return (
    <>
      <table>
        <caption>Most that each edge is off its planned place, {unit}</caption>
        <HeadRow columns={['level | beside', 'out', 'in', 'allowed']} />
        <tbody>
          {edges.map((edge, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: edges of a comparison have no other name, and never change places
            <EdgeRow key={index} edge={edge} unit={unit} />
          ))}
        </tbody>
      </table>
      <p className="aside">Where nothing is asked of an edge, as near as a line is cut by hand is allowed.</p>
    </>
  );
}

function EdgeRow({ edge, unit }: { readonly edge: EdgeCompared; readonly unit: ShownUnit }) {
  const go = useGoTo();
  const { regions, outward, inward, lost, allowed } = edge;
  const most = outward.by >= inward.by ? outward : inward;
  return (
    <tr>
      <th scope="row">
        <button type="button" className="go" onClick={() => go({ at: lost?.at ?? most.at, regions })}>
          {edgeName(edge, unit)}
        </button>
      </th>
      {lost === undefined ? (
        <>
          <MoveCell by={outward.by} allowed={allowed.outward} unit={unit} />
          <MoveCell by={inward.by} allowed={allowed.inward} unit={unit} />
        </>
      ) : (
        <td className="over" colSpan={2}>
          lost in places
        </td>
      )}
      <td>{allowedFigures(allowed.outward, allowed.inward, unit)}</td>
    </tr>
  );
}

interface MoveCellProps {
  readonly by: number;
  readonly allowed: number;
  readonly unit: ShownUnit;
}

function MoveCell({ by, allowed, unit }: MoveCellProps) {
  if (by < PRINTED_AS_NOTHING) return <td>0</td>;
  return <td className={by > allowed ? 'over' : ''}>{gaugedFigure(by, unit)}</td>;
}
