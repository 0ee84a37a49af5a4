/** The words of the ladder: a row for each rung, each stage and the far face. */
import { isLocked } from '#app/state/edit-levels.ts';
import type { Rung } from '#app/state/rungs.ts';
import { isTapered } from '#app/state/sheet-thickness.ts';
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { showArea, showLength, showMinutes } from '#units/show-length.ts';

interface RungRowProps {
  readonly rung: Rung;
  readonly thickness: number;
}

export function RungRow({ rung, thickness }: RungRowProps) {
  const { actions } = useWorkbench();
  const { unit, selection } = useWorkbenchState((state) => state.session);
  const { level } = rung.stage;
  const job = useDocument()?.job;
  const isLevelLocked = job !== undefined && isLocked(job, level);
  const ids = rung.regions.map((region) => region.id);
  const isSelected = ids.length > 0 && ids.every((id) => selection.includes(id));
  const canJoin = selection.length > 0 && !selection.every((id) => ids.includes(id));
  const count = ids.length === 1 ? '1 region' : `${ids.length} regions`;
  return (
    <div className="rung-row" data-level={level}>
      <button
        type="button"
        className="rung"
        aria-pressed={isSelected}
        onClick={(event) => actions.select(ids, event.shiftKey ? 'add' : 'only')}
      >
        <span className="depth">{showLength(level, unit)}</span>
        <span>
          , leaves {showLength(thickness - level, unit)}
          {job !== undefined && isTapered(job) && ' at most'}
        </span>
        <span className="line">
          {count}, {showArea(rung.area, unit)}
          {isLevelLocked && ', locked'}
        </span>
      </button>
      {canJoin && (
        <button
          type="button"
          className="join"
          title="Ask this depth of what is picked"
          aria-label={`Join what is picked to the level of ${showLength(level, unit)}`}
          onClick={() => actions.askOfSelection({ depth: level }, `join level ${showLength(level, unit)}`)}
        >
          join
        </button>
      )}
    </div>
  );
}

/** The rung is named by its depth, so that a stage needs no more than what happens in it. */
export function StageRow({ stage }: { readonly stage: ShownStage }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <div className="stage-row">
      <span className="chip" style={{ background: stage.color, color: inkOn(stage.color) }}>
        <span className="number">{stage.number}</span>
        <StageMark stage={stage.number} />
      </span>
      <span className="line">
        <span className="verb">etch </span>
        {showLength(stage.etch, unit)}, {showMinutes(stage.minutes)}
      </span>
    </div>
  );
}

export function FarFaceRow({ thickness }: { readonly thickness: number }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const job = useDocument()?.job;
  const atMost = job !== undefined && isTapered(job) ? ' at most' : '';
  return (
    <span className="far-face">
      far face, {showLength(thickness, unit)}
      {atMost}
    </span>
  );
}
