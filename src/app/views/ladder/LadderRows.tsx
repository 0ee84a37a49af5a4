/** The figures of the ladder: one for each level, to pick what lies on it and to join it; of the face that is not on show, to turn to it. */
import { isLocked } from '#app/state/edits/edit-levels.ts';
import { leftFigure } from '#app/state/left-of-sheet.ts';
import { hasFarFace } from '#app/state/shown-face.ts';
import { useLeft } from '#app/views/use-left.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { SheetSide } from '#job/job.ts';
import { lengthFigure, showArea, showLength } from '#units/show-length.ts';
import type { LadderRow } from './ladder-rows.ts';
import type { SideLevel } from './ladder-sides.ts';
import { leavesWords } from './leaves-words.ts';

interface RowProps {
  readonly row: LadderRow;
  readonly saysLeft: boolean;
  readonly onShow: (planned: SideLevel | undefined) => void;
}

export function Row({ row, ...rest }: RowProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  if (row.kind === 'level') return <LevelRow planned={row.planned} {...rest} />;
  if (row.kind === 'other') return <OtherRow planned={row.planned} face={row.face} />;
  if (row.kind === 'unused')
    return (
      <span className="unused-level" title="No region accepts this level">
        {lengthFigure(row.level, unit)}
      </span>
    );
  return (
    <span className="between-figure" title="The least metal between both faces">
      web
      <strong>{lengthFigure(row.left, unit)}</strong>
    </span>
  );
}

interface OtherRowProps {
  readonly planned: SideLevel;
  readonly face: SheetSide;
}

function OtherRow({ planned: { stage, regions }, face }: OtherRowProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const point = (isOn: boolean) => actions.light(isOn ? { regions: [], stage: stage.number } : undefined);
  return (
    <div className="level-row">
      <button
        type="button"
        className="level-button behind"
        title={`Turn to the ${face} face`}
        onClick={() => actions.turnOver(face)}
        onPointerEnter={() => point(true)}
        onPointerLeave={() => point(false)}
      >
        <span className="depth">{lengthFigure(stage.level, unit)}</span>
        <span className="unseen">
          {` ${unit} from the ${face} face, ${counted(regions.length, 'region')}: turn to it`}
        </span>
      </button>
    </div>
  );
}

interface LevelRowProps {
  readonly planned: SideLevel;
  readonly saysLeft: boolean;
  readonly onShow: (planned: SideLevel | undefined) => void;
}

function LevelRow({ planned, saysLeft, onShow }: LevelRowProps) {
  const { actions } = useWorkbench();
  const { unit, selection } = useWorkbenchState((state) => state.session);
  const { level, number } = planned.stage;
  const job = useDocument()?.job;
  const ids = planned.regions.map((region) => region.id);
  const isSelected = ids.length > 0 && ids.every((id) => selection.includes(id));
  const canJoin = selection.length > 0 && !selection.every((id) => ids.includes(id));
  const isTwoFaced = useWorkbenchState(hasFarFace);
  const left = useLeft();
  const under = left === undefined ? '' : leftFigure(left(ids, level), unit);
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
            {planned.isCut ? '–' : under}
          </span>
        )}
        <span className="unseen">
          {` ${unit}, ${leavesWords(`${under} ${unit}`, { isCut: planned.isCut, isTwoFaced })}, ${counted(ids.length, 'region')}, ${showArea(planned.area, unit)}${locked}`}
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
