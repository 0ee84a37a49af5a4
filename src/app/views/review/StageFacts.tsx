/** All of the stage on show: what is peeled, what is bare and sealed, the bath, and the depth of each floor before and after. */
import { leftFigure } from '#app/state/left-of-sheet.ts';
import type { StageStep } from '#app/state/stage-steps.ts';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { useLeft } from '#app/views/use-left.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { lengthFigure, showMinutes } from '#units/show-length.ts';

export function StageFacts({ step }: { readonly step: StageStep }) {
  const left = useLeft();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { stage, bare, from, to, floors } = step;
  const stages = useWorkbenchState(({ derived }) => derived.page?.plan?.stages);
  const regionsOf = (number: number) => stages?.find((each) => each.number === number)?.regions ?? [];
  const { sealed, regions, lines } = stage;
  return (
    <section className="stage-facts" role="status" aria-label="Stage on show">
      <h2>Stage {stage.number}</h2>
      <dl>
        <dt>Peel</dt>
        <dd>
          inside {lines.length === 1 ? 'one line' : `${lines.length} lines`}: {listOf(regions)}
        </dd>
        <dt>Bare</dt>
        <dd>
          {bare.length === 1 ? 'piece' : 'pieces'} {listOf(bare.map(String))}
        </dd>
        <dt>Stay sealed</dt>
        <dd>
          {sealed.length === 0
            ? `nothing${floors.length > 0 ? ' any more' : ': each stage has a coat of its own'}`
            : `${sealed.length === 1 ? 'line of stage' : 'lines of stages'} ${listOf(sealed.map(String))}`}
        </dd>
        <dt>Bath</dt>
        <dd>
          {showMinutes(stage.minutes)}, from {from.toFixed(1)} to {to.toFixed(1)}
        </dd>
      </dl>
      {floors.length > 0 && (
        <table>
          <caption>Floors in this stage, {unit}</caption>
          <HeadRow columns={['floors of', 'before', 'after', 'leaves']} />
          <tbody>
            {floors.map(({ stage: number, before, after }) => (
              <tr key={number}>
                <th scope="row">stage {number}</th>
                <td>{lengthFigure(before, unit)}</td>
                <td>
                  <b>{lengthFigure(after, unit)}</b>
                </td>
                <td>{left !== undefined && leftFigure(left(regionsOf(number), after), unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const MOST_NAMES = 6;

function listOf(names: readonly string[]): string {
  if (names.length <= MOST_NAMES) return names.join(', ');
  return `${names[0]} to ${names.at(-1)} (${names.length})`;
}
