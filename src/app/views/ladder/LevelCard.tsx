/** All that is known of a level, beside the ladder while it is pointed at. */
import { wordsOn } from '#app/scene/stage-looks.ts';
import { leftFigure } from '#app/state/left-of-sheet.ts';
import { hasFarFace } from '#app/state/shown-face.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useLeft } from '#app/views/use-left.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { lengthFigure, showArea, showLength, showMinutes } from '#units/show-length.ts';
import type { SideLevel } from './ladder-sides.ts';
import { leavesWords } from './leaves-words.ts';

interface LevelCardProps {
  readonly planned: SideLevel;
  /** px from the top of the ladder. */
  readonly top: number;
}

export function LevelCard({ planned, top }: LevelCardProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const left = useLeft();
  const { number, color, level, etch, minutes } = planned.stage;
  const isTwoFaced = useWorkbenchState(hasFarFace);
  const ids = planned.regions.map(({ id }) => id);
  const under = left === undefined ? '' : `${leftFigure(left(ids, level), unit)} ${unit}`;
  return (
    <div className="level-card" style={{ top }}>
      <header>
        <strong>{lengthFigure(level, unit)}</strong>
        <span className="stage-chip" style={{ background: color, color: wordsOn(color) }}>
          {number} <StageMark stage={number} />
        </span>
      </header>
      <p>{leavesWords(under, { isCut: planned.isCut, isTwoFaced })}</p>
      <p>
        {counted(planned.regions.length, 'region')}, {showArea(planned.area, unit)}
      </p>
      <p>
        etch {showLength(etch, unit)}, {showMinutes(minutes)}
      </p>
    </div>
  );
}
