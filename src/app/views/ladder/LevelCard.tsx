/** All that is known of a level, beside the ladder while it is pointed at. */
import { wordsOn } from '#app/scene/stage-looks.ts';
import type { PlannedLevel } from '#app/state/planned-levels.ts';
import { isTapered } from '#app/state/sheet-thickness.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { lengthFigure, showArea, showLength, showMinutes } from '#units/show-length.ts';

interface LevelCardProps {
  readonly planned: PlannedLevel;
  readonly thickness: number;
  /** px from the top of the ladder. */
  readonly top: number;
}

export function LevelCard({ planned, thickness, top }: LevelCardProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const job = useDocument()?.job;
  const { number, color, level, etch, minutes } = planned.stage;
  const most = job !== undefined && isTapered(job) ? 'at most ' : '';
  return (
    <div className="level-card" style={{ top }}>
      <header>
        <strong>{lengthFigure(level, unit)}</strong>
        <span className="stage-chip" style={{ background: color, color: wordsOn(color) }}>
          {number} <StageMark stage={number} />
        </span>
      </header>
      <p>
        leaves {most}
        {showLength(thickness - level, unit)}
      </p>
      <p>
        {counted(planned.regions.length, 'region')}, {showArea(planned.area, unit)}
      </p>
      <p>
        etch {showLength(etch, unit)}, {showMinutes(minutes)}
      </p>
    </div>
  );
}
