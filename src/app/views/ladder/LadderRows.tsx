/** The figures of the ladder: one for each level, to pick what lies on it and to join it. */
import { isLocked } from '#app/state/edits/edit-levels.ts';
import type { PlannedLevel } from '#app/state/planned-levels.ts';
import { isTapered } from '#app/state/sheet-thickness.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { lengthFigure, showArea, showLength } from '#units/show-length.ts';

interface LevelRowProps {
  readonly planned: PlannedLevel;
  readonly thickness: number;
  readonly saysLeft: boolean;
  readonly onShow: (planned: PlannedLevel | undefined) => void;
}

export function LevelRow({ planned, thickness, saysLeft, onShow }: LevelRowProps) {
  const { actions } = useWorkbench();
  const { unit, selection } = useWorkbenchState((state) => state.session);
  const { level, number } = planned.stage;
  const job = useDocument()?.job;
  const ids = planned.regions.map((region) => region.id);
  const isSelected = ids.length > 0 && ids.every((id) => selection.includes(id));
  const canJoin = selection.length > 0 && !selection.every((id) => ids.includes(id));
  const atMost = job !== undefined && isTapered(job) ? ' at most' : '';
  const locked = job !== undefined && isLocked(job, level) ? ', locked' : '';
  const point = (isOn: boolean) => {
    onShow(isOn ? planned : undefined);
    actions.light(isOn ? { regions: ids, stage: number } : undefined);
  };
  return (
    <div className="level-row" data-level={level}>
      <button
        type="button"
        className="level-button"
        aria-pressed={isSelected}
        onClick={(event) => actions.select(ids, event.shiftKey ? 'add' : 'only')}
        onPointerEnter={() => point(true)}
        onPointerLeave={() => point(false)}
        onFocus={() => onShow(planned)}
        onBlur={() => onShow(undefined)}
      >
        <span className="depth">{lengthFigure(level, unit)}</span>
        {saysLeft && (
          <span className="left" aria-hidden="true">
            {lengthFigure(thickness - level, unit)}
          </span>
        )}
        <span className="unseen">
          {` ${unit}, leaves ${showLength(thickness - level, unit)}${atMost}, ${counted(ids.length, 'region')}, ${showArea(planned.area, unit)}${locked}`}
        </span>
      </button>
      {canJoin && (
        <button
          type="button"
          className="join"
          title="Let what is picked end on this level"
          aria-label={`Join what is picked to the level of ${showLength(level, unit)}`}
          onClick={() => actions.joinSelection(level, `join level ${showLength(level, unit)}`)}
        >
          join
        </button>
      )}
    </div>
  );
}
