/**
 * The ladder: the sheet's thickness to scale, surface at the top, with a line for each level and a stage in each space between
 * two. Read upwards it is the run, read downwards the part.
 */

import { Pin, PinOff } from 'lucide-react';
import { type CSSProperties, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import { moveLevel } from '#app/state/edits/edit-levels.ts';
import type { LadderWidth } from '#app/state/layout-state.ts';
import { type PlannedLevel, plannedLevelsOf } from '#app/state/planned-levels.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { lengthFigure, showLength } from '#units/show-length.ts';
import { LadderAxis } from './LadderAxis.tsx';
import { LevelRow } from './LadderRows.tsx';
import { LevelCard } from './LevelCard.tsx';
import { LevelHandle } from './LevelHandle.tsx';
import { placeRows } from './ladder-layout.ts';
import { type LadderMeasures, ladderMeasures } from './ladder-measures.ts';

const MARGIN = { top: 8, bottom: 18 };
/** Of a figure, px: so near they may stand. */
const FIGURE = 16.5;
/** Of the line above the bar. */
const HEAD = 32;

export function LadderView() {
  const { layout } = useWorkbench();
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const document = useDocument();
  const how = useStore(layout, (state) => state.ladder);
  const unit = useWorkbenchState((state) => state.session.unit);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const levels = useMemo(() => (plan === undefined ? [] : plannedLevelsOf(plan)), [plan]);
  const thickness = document === undefined ? 0 : sheetThickness(document.job);
  const measures = ladderMeasures(how, unit);
  return (
    <section
      className={`ladder ${how}${isStale ? ' stale' : ''}`}
      aria-labelledby="ladder-heading"
      style={{ '--ladder-width': `${measures.width}px` } as CSSProperties}
    >
      <h2 id="ladder-heading" className="unseen">
        Levels
      </h2>
      <LadderHead how={how} measures={measures} />
      <div className="ladder-frame" ref={frame}>
        {size !== undefined && thickness > 0 && (
          <Ladder levels={levels} thickness={thickness} size={size} how={how} measures={measures} />
        )}
      </div>
    </section>
  );
}

function LadderHead({ how, measures }: { readonly how: LadderWidth; readonly measures: LadderMeasures }) {
  const { layout } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const turn = (ladder: LadderWidth) => layout.setState({ ladder });
  return (
    <header className="ladder-head">
      <button
        type="button"
        className="fold"
        title={how === 'folded' ? 'Unfold the ladder' : 'Fold the ladder'}
        onClick={() => turn(how === 'folded' ? 'usual' : 'folded')}
      >
        {how === 'usual' ? `Depth, ${unit}` : unit}
      </button>
      {how === 'pinned' && (
        <>
          <span className="column" style={{ left: measures.figures }}>
            depth
          </span>
          <span className="column" style={{ right: 34 }}>
            leaves
          </span>
        </>
      )}
      {how !== 'folded' && (
        <IconButton
          icon={how === 'pinned' ? PinOff : Pin}
          name={how === 'pinned' ? 'Hide what levels leave' : 'Show what levels leave'}
          onPress={() => turn(how === 'pinned' ? 'usual' : 'pinned')}
        />
      )}
    </header>
  );
}

interface LadderProps {
  readonly levels: readonly PlannedLevel[];
  readonly thickness: number;
  readonly size: Size;
  readonly how: LadderWidth;
  readonly measures: LadderMeasures;
}

function Ladder({ levels, thickness, size, how, measures }: LadderProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const litStage = useWorkbenchState((state) => state.lit?.stage);
  const [shown, setShown] = useState<PlannedLevel>();
  const height = Math.max(size.height, levels.length * FIGURE + MARGIN.top + MARGIN.bottom);
  const scale = (height - MARGIN.top - MARGIN.bottom) / thickness;
  const yOf = (depth: number) => MARGIN.top + depth * scale;
  const job = useDocument()?.job;
  const leaders = useMemo(() => {
    const all = [
      ...levels.map((planned) => ({ level: planned.stage.level, planned })),
      ...unusedLevels(job, levels).map((level) => ({ level, planned: undefined })),
    ].sort((a, b) => a.level - b.level);
    const wanted = all.map(({ level }) => ({ wanted: MARGIN.top + level * scale, height: FIGURE }));
    const tops = placeRows(wanted, height);
    return all.map((each, index) => ({ ...each, to: (tops[index] ?? 0) + FIGURE / 2 }));
  }, [levels, job, scale, height]);
  const move = (planned: PlannedLevel, to: number) => {
    const { level } = planned.stage;
    actions.edit(`level ${showLength(level, unit)} to ${showLength(to, unit)}`, (job) =>
      moveLevel(job, { from: level, to, levels: levels.map(({ stage }) => stage.level) }),
    );
  };
  return (
    <div className="ladder-body" style={{ height }}>
      <LadderAxis {...{ levels, thickness, height, yOf, unit, how, measures, leaders, litStage }} />
      {levels.map((planned) => (
        <LevelHandle
          key={planned.stage.number}
          planned={planned}
          thickness={thickness}
          yOf={yOf}
          bar={measures.bar}
          onMove={(to) => move(planned, to)}
          onShow={setShown}
          onPick={() => actions.select(planned.regions.map(({ id }) => id))}
        />
      ))}
      <ol className="ladder-rows">
        {leaders.map(({ level, planned, to }) => (
          <li
            key={level}
            className={planned !== undefined && planned.stage.number === litStage ? 'lit' : undefined}
            style={
              { top: to - FIGURE / 2, height: FIGURE, '--figures': `${measures.figures}px` } as CSSProperties
            }
          >
            {planned === undefined ? (
              <span className="unused-level" title="No region accepts this level">
                {lengthFigure(level, unit)}
              </span>
            ) : (
              <LevelRow
                planned={planned}
                thickness={thickness}
                saysLeft={how === 'pinned'}
                onShow={setShown}
              />
            )}
          </li>
        ))}
      </ol>
      {shown !== undefined && levels.includes(shown) && (
        <LevelCard
          planned={shown}
          thickness={thickness}
          top={Math.min(yOf(shown.stage.level) - HEAD, height - 104)}
        />
      )}
      {levels.length === 0 && how !== 'folded' && (
        <p className="ladder-empty" style={{ left: measures.figures }}>
          No levels yet.
        </p>
      )}
    </div>
  );
}

/** Levels of the job's list that came to no stage: no region accepts them. */
function unusedLevels(job: JobFile | undefined, levels: readonly PlannedLevel[]): number[] {
  if (job === undefined || !Array.isArray(job.levels)) return [];
  const isUsed = (level: number) => levels.some(({ stage }) => Math.abs(stage.level - level) < SAME_LEVEL);
  return job.levels.map((level: number) => fromJobUnits(job, level)).filter((level) => !isUsed(level));
}
