/** All that is known of a rung, beside the ladder while it is pointed at. */
import { wordsOn } from '#app/scene/stage-looks.ts';
import type { Rung } from '#app/state/rungs.ts';
import { isTapered } from '#app/state/sheet-thickness.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { lengthFigure, showArea, showLength, showMinutes } from '#units/show-length.ts';

interface RungCardProps {
  readonly rung: Rung;
  readonly thickness: number;
  /** px from the top of the ladder. */
  readonly top: number;
}

export function RungCard({ rung, thickness, top }: RungCardProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const job = useDocument()?.job;
  const { number, color, level, etch, minutes } = rung.stage;
  const most = job !== undefined && isTapered(job) ? 'at most ' : '';
  return (
    <div className="rung-card" style={{ top }}>
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
        {counted(rung.regions.length, 'region')}, {showArea(rung.area, unit)}
      </p>
      <p>
        etch {showLength(etch, unit)}, {showMinutes(minutes)}
      </p>
    </div>
  );
}
