/**
 * What the colours of the relief mean: each level of the face on show with its stage, depth, what it leaves and minutes. A row above it, or a
 * list at its right. Where the other face is etched too, a level leaves so much at most: what lies behind it takes its own.
 */
import { wordsOn } from '#app/scene/stage-looks.ts';
import { leftFigure } from '#app/state/left-of-sheet.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import { ladderSides } from '#app/views/ladder/ladder-sides.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useLeft } from '#app/views/use-left.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { lengthFigure } from '#units/show-length.ts';
import { WIDE_VIEW } from './use-pose-keeper.ts';

/** A row has room for so many stages. */
const MOST_IN_ROW = 7;

export function DepthKey({ width }: { readonly width: number }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const lit = useWorkbenchState((state) => state.lit);
  const page = useWorkbenchState((state) => state.derived.page);
  const face = useWorkbenchState(faceOnShow);
  const left = useLeft();
  const sides = ladderSides(page?.plan, page?.faces);
  const levels = sides.find(({ isOnShow }) => isOnShow)?.levels ?? [];
  if (left === undefined || levels.length === 0) return null;
  const isTwoFaced = sides.length > 1;
  const shallowestFirst = [...levels].sort((a, b) => a.stage.level - b.stage.level);
  const isRow = width < WIDE_VIEW && levels.length <= MOST_IN_ROW;
  const leaves = (ids: readonly string[], depth: number) => {
    const under = left(ids, depth);
    return leftFigure({ ...under, isMost: under.isMost || isTwoFaced }, unit);
  };
  return (
    <table className={isRow ? 'depth-key row' : 'depth-key'}>
      <caption className="unseen">
        Levels of the relief{isTwoFaced ? `, ${face} face` : ''}, {unit}
      </caption>
      <thead>
        <tr>
          <th>{unit}</th>
          <th>depth</th>
          <th>leaves</th>
          <th>min</th>
        </tr>
      </thead>
      <tbody>
        {shallowestFirst.map(({ stage: { number, color, level, minutes, regions }, isCut }) => (
          <tr
            key={number}
            className={lit?.stage === number ? 'lit' : undefined}
            onPointerEnter={() => actions.light({ regions, stage: number })}
            onPointerLeave={() => actions.light(undefined)}
          >
            <th>
              <span className="stage-chip" style={{ background: color, color: wordsOn(color) }}>
                {number} <StageMark stage={number} />
              </span>
            </th>
            <td>{lengthFigure(level, unit)}</td>
            <td>{isCut ? 'nothing' : leaves(regions, level)}</td>
            <td>{minutes.toFixed(1)}</td>
          </tr>
        ))}
        <tr>
          <th>
            <span className="stage-chip land">land</span>
          </th>
          <td>{lengthFigure(0, unit)}</td>
          <td>{leaves([], 0)}</td>
          <td />
        </tr>
      </tbody>
    </table>
  );
}
